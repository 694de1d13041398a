#!/usr/bin/env bash
# Builds the app into web/dist: its modules in WebAssembly, then the pages, then the one page with everything inside.
# What has not changed since the last time is not built again.
set -euo pipefail
. "$(dirname "$0")/lib.sh"
cd "$ROOT"

need node nodejs
need npm npm

# What is installed is what the lock says.
if [ ! -f web/node_modules/.package-lock.json ] || [ web/package-lock.json -nt web/node_modules/.package-lock.json ]; then
  say "installing what the app is built with"
  (cd web && npm ci --no-audit --no-fund --loglevel=error)
fi

# newer THAN… — the files under these that are newer than THAN, or all if it is not there.
newer() {
  local than=$1
  shift
  if [ -f "$than" ]; then find "$@" -type f -newer "$than"; else find "$@" -type f; fi
}

core=web/src/core/wasm
made=$core/web_papers_bg.wasm
inputs=(Cargo.lock Cargo.toml regions crates)
if [ ! -f "$core/web_core_bg.wasm" ] || [ -n "$(newer "$made" "${inputs[@]}" | head -n 1)" ]; then
  bash scripts/wasm_web.sh
  touch "$made"
fi

if [ -n "$(newer web/dist/one-file.html web/src web/build web/public web/index.html web/*.ts web/package.json examples/boathouse.toml | head -n 1)" ]; then
  say "building the app"
  (cd web && npm run --silent build >"$TARGET/web-build.log" 2>&1) || { tail -n 30 "$TARGET/web-build.log"; exit 1; }
fi
