#!/usr/bin/env bash
# Builds the app's modules for the browser, with the JavaScript that goes with them, into web/src/core/wasm.
set -euo pipefail
. "$(dirname "$0")/lib.sh"
cd "$ROOT"

OUT=$ROOT/web/src/core/wasm

wasm_build
for module in $WASM_MODULES; do
  web_bindgen "$TARGET/wasm/$WASM/web/${module//-/_}.wasm" "$OUT"
done
