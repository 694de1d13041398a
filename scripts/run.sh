#!/usr/bin/env bash
# The main job on the main example: check, solve, and write everything a carpenter takes to the bench.
set -euo pipefail
. "$(dirname "$0")/lib.sh"
cd "$ROOT"

job=examples/boathouse.toml
need cc gcc libc6-dev
cargo build --release --quiet -p seatcut
seatcut=$TARGET/release/seatcut

mkdir -p out
# Each command tells the notices of the job; once is enough here.
"$seatcut" check "$job" | head -n 1
"$seatcut" solve "$job"
"$seatcut" solve "$job" --json >out/boathouse.json
"$seatcut" pack "$job" -o out/boathouse-pack.pdf --csv out/boathouse-members.csv >/dev/null
printf '\nWritten:\n'
for file in out/boathouse-pack.pdf out/boathouse-members.csv out/boathouse.json; do
  printf '  %-28s %8d bytes\n' "$file" "$(wc -c <"$file")"
done
