#!/usr/bin/env bash
# Builds the app into web/dist: the core for the browser, the app, and the one-file page beside it.
set -euo pipefail
. "$(dirname "$0")/lib.sh"
cd "$ROOT"

have npm || { echo "npm is missing: install Node 20.19 or newer" >&2; exit 1; }
bash scripts/wasm_web.sh

cd web
# What is there and fits the lock file is left alone: a second run must not need a network.
if [ ! -d node_modules ] || [ package-lock.json -nt node_modules/.package-lock.json ]; then
  npm ci --no-audit --no-fund
fi
npm run build
say "the app is in web/dist"
