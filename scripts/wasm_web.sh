#!/usr/bin/env bash
# Builds the core and the papers for the browser, with the JavaScript that goes with them,
# into web/src/core/wasm. Two ways to get the standard library, as in scripts/wasm.sh.
set -euo pipefail
. "$(dirname "$0")/lib.sh"
cd "$ROOT"

WASM=wasm32-unknown-unknown
FETCH_SECONDS=120
OUT=$ROOT/web/src/core/wasm
MODULES="web-core web-papers"
packages=()
for c in $MODULES; do packages+=(-p "$c"); done

has_target() { [ -d "$(rustc --print sysroot)/lib/rustlib/$WASM" ]; }

if [ "${WASM_FROM:-}" != debian ] &&
  { has_target || { have rustup && timeout $FETCH_SECONDS rustup target add $WASM >/dev/null 2>&1 && has_target; }; }; then
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

for c in $MODULES; do
  cargo run --quiet -p web-bindgen -- "$TARGET/wasm/$WASM/web/${c//-/_}.wasm" "$OUT"
done
