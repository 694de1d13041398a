#!/usr/bin/env bash
# Builds the pure crates and crates/wasm-check for WebAssembly into target/wasm.
# Two ways: rustup's ready-made standard library, or where rustup or its server is out of reach,
# Debian's compiler with the standard library built from source (WASM_FROM=debian chooses it).
set -euo pipefail
. "$(dirname "$0")/lib.sh"
cd "$ROOT"

WASM=wasm32-unknown-unknown
FETCH_SECONDS=120
packages=(-p wasm-check)
for c in $PURE_CRATES; do packages+=(-p "$c"); done

has_target() { [ -d "$(rustc --print sysroot)/lib/rustlib/$WASM" ]; }

if [ "${WASM_FROM:-}" != debian ] &&
  { has_target || { have rustup && timeout $FETCH_SECONDS rustup target add $WASM >/dev/null 2>&1 && has_target; }; }; then
  say "with the toolchain's own standard library"
  cargo build --release --target $WASM --target-dir "$TARGET/wasm" "${packages[@]}"
else
  say "with Debian's compiler, building the standard library"
  [ -x /usr/bin/rustc ] && [ -x /usr/bin/cargo ] && [ -f /usr/lib/rustlib/src/rust/library/Cargo.toml ] ||
    apt_install rustc-web cargo-web rust-web-src
  need wasm-ld lld
  # -Z build-std is asked of a stable compiler, which is what RUSTC_BOOTSTRAP allows.
  RUSTC=/usr/bin/rustc RUSTC_BOOTSTRAP=1 CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_LINKER=wasm-ld \
    /usr/bin/cargo build --release -Z build-std=std,panic_abort --target $WASM \
    --target-dir "$TARGET/wasm" "${packages[@]}"
fi
