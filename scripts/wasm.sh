#!/usr/bin/env bash
# Builds the pure crates and crates/wasm-check for WebAssembly into target/wasm.
set -euo pipefail
. "$(dirname "$0")/lib.sh"
cd "$ROOT"

# shellcheck disable=SC2086  # a list of names
wasm_build release wasm-check $PURE_CRATES
