#!/usr/bin/env bash
# Builds the core and the papers for the browser, with the JavaScript that goes with them, into web/src/core/wasm.
set -euo pipefail
. "$(dirname "$0")/lib.sh"
cd "$ROOT"

OUT=$ROOT/web/src/core/wasm
MODULES="web-core web-papers"

# shellcheck disable=SC2086  # a list of names
wasm_build web $MODULES
for module in $MODULES; do
  cargo run --quiet -p web-bindgen -- "$TARGET/wasm/$WASM/web/${module//-/_}.wasm" "$OUT"
done
