# Shared by the scripts: where things are, and how to get what is missing.
# Sourced, never run; the caller has set -euo pipefail.

ROOT=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
TOOLS=$ROOT/.tools
TARGET=${CARGO_TARGET_DIR:-$ROOT/target}
export PATH="$TOOLS/bin:$PATH"
export CARGO_TERM_COLOR=${CARGO_TERM_COLOR:-auto}

# The crates that must build for the browser: no files, clocks, threads or screens.
PURE_CRATES="geometry job roof strength order site drawings document picture working app merge travel"
# Those of them that no module of the app brings with it.
PURE_APART="merge travel"

say() { printf '    %s\n' "$*"; }
fail() {
  printf '    FAULT: %s\n' "$*" >&2
  return 1
}
have() { command -v "$1" >/dev/null 2>&1; }

# apt_install PACKAGE… — needs Debian and root (or sudo without a password).
apt_install() {
  local as_root=""
  have apt-get || { fail "please install: $*"; return 1; }
  if [ "$(id -u)" != 0 ]; then
    if have sudo && sudo -n true 2>/dev/null; then as_root="sudo -n"; else
      fail "please install as root: apt-get install $*"
      return 1
    fi
  fi
  say "installing $*"
  local install="$as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y --no-install-recommends"
  # The package lists of a fresh machine may be missing or old.
  $install "$@" >/dev/null 2>&1 || { $as_root apt-get update >/dev/null 2>&1 && $install "$@" >/dev/null; }
}

# need COMMAND PACKAGE… — install the packages unless the command is there.
need() {
  local command=$1
  shift
  have "$command" || apt_install "$@"
}

# cargo_tool NAME VERSION — a cargo subcommand of this version in .tools/, built once.
# An unoptimised build of the tool is ready sooner than an optimised one pays back.
cargo_tool() {
  local name=$1 version=$2
  [ -x "$TOOLS/bin/$name" ] && "$TOOLS/bin/$name" --version 2>/dev/null | grep -q " $version\$" && return 0
  say "building $name $version into .tools/"
  env -u CARGO_TARGET_DIR cargo install "$name" --version "$version" --locked --debug --quiet --root "$TOOLS"
}

# venv DIRECTORY PACKAGE==VERSION… — a Python environment that holds exactly these.
venv() {
  local dir=$1 wanted
  shift
  wanted="$*"
  [ -x "$dir/bin/python" ] && [ "$(cat "$dir/holds" 2>/dev/null)" = "$wanted" ] && return 0
  need python3 python3 python3-venv
  rm -rf "$dir"
  python3 -m venv "$dir" 2>/dev/null || { apt_install python3-venv && python3 -m venv "$dir"; }
  say "installing $wanted into ${dir#"$ROOT"/}"
  "$dir/bin/pip" install --quiet --disable-pip-version-check "$@"
  printf '%s\n' "$wanted" >"$dir/holds"
}

# surface_oracle PLANS SEED [CORNERS] — compares roof surfaces over seeded random plans, heights and speed, with an
# outside skeleton library. For comparison only: it is neither linked nor shipped.
surface_oracle() {
  local plans=$TARGET/oracle-plans.jsonl
  shipped
  venv "$TARGET/oracle-venv" pysvcgal==0.0.25 numpy==2.2.6
  "$TARGET/release/examples/plans_for_oracle" "$@" >"$plans"
  "$TARGET/oracle-venv/bin/python" scripts/oracle_surface.py <"$plans"
}

# cutting_oracle CASES SEED MOST_PIECES — compares cutting plans of seeded random roofs with a general MILP solver.
cutting_oracle() {
  shipped
  venv "$TARGET/cutting-oracle-venv" highspy==1.16.0 numpy==2.4.6
  "$TARGET/release/examples/cutting_cases" "$@" >"$TARGET/oracle-cutting.jsonl"
  "$TARGET/cutting-oracle-venv/bin/python" scripts/oracle_cutting.py "$1" <"$TARGET/oracle-cutting.jsonl"
}

# The native build, one for all that is tested, compared and shipped: cargo unites the features of what is built
# together, so that a part built alone (-p) would build much of what it stands on a second time.
NATIVE="--release --workspace --features app/bindings"

# shipped — the binaries, examples and tests in target/release.
shipped() { cargo build $NATIVE --quiet --bins --tests --examples; }

# web_bindgen — the program that writes the JavaScript of a WebAssembly module, in target/release.
web_bindgen() {
  local program=$TARGET/release/web-bindgen
  if [ ! -x "$program" ] || [ -n "$(find Cargo.lock crates/web-bindgen -type f -newer "$program" | head -n 1)" ]; then
    cargo build --release --quiet -p web-bindgen
  fi
  "$program" "$@"
}

# wasm_build — builds the app's modules, and with them the pure crates, for the browser, into target/wasm, all at once:
# what they share is built once, and for the modules only. Two ways: rustup's ready-made standard
# library, or where rustup or its server is out of reach, Debian's compiler with the standard library built from source
# (WASM_FROM=debian chooses it).
WASM=wasm32-unknown-unknown
WASM_MODULES="web-core web-side web-papers"
WASM_FETCH_SECONDS=120
has_wasm_target() { [ -d "$(rustc --print sysroot)/lib/rustlib/$WASM" ]; }
wasm_build() {
  local packages=() package
  for package in $WASM_MODULES $PURE_APART; do packages+=(-p "$package"); done
  if [ "${WASM_FROM:-}" != debian ] &&
    { has_wasm_target || { have rustup && timeout $WASM_FETCH_SECONDS rustup target add $WASM >/dev/null 2>&1 && has_wasm_target; }; }; then
    say "with the toolchain's own standard library"
    cargo build --profile web --target $WASM --target-dir "$TARGET/wasm" "${packages[@]}"
  else
    say "with Debian's compiler, building the standard library"
    [ -x /usr/bin/rustc ] && [ -x /usr/bin/cargo ] && [ -f /usr/lib/rustlib/src/rust/library/Cargo.toml ] ||
      apt_install rustc-web cargo-web rust-web-src
    need wasm-ld lld
    # -Z build-std is asked of a stable compiler, which is what RUSTC_BOOTSTRAP allows.
    RUSTC=/usr/bin/rustc RUSTC_BOOTSTRAP=1 CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_LINKER=wasm-ld \
      /usr/bin/cargo build --profile web -Z build-std=std,panic_abort --target $WASM \
      --target-dir "$TARGET/wasm" "${packages[@]}"
  fi
}
