#!/usr/bin/env bash
# The main job on the main example: check, solve, and write everything a carpenter takes to the bench;
# then the app, served on this machine until it is stopped. SERVE=no leaves that out.
set -euo pipefail
. "$(dirname "$0")/lib.sh"
cd "$ROOT"

need cc gcc libc6-dev
bash scripts/web.sh
cargo build --release --quiet -p seatcut
seatcut=$TARGET/release/seatcut

mkdir -p out
# The example roof, and a house with everything fitted that a roof can have.
for name in boathouse whole-house; do
  job=examples/$name.toml
  # Each command tells the notices of the job; once is enough here.
  "$seatcut" check "$job" | head -n 1
  "$seatcut" solve "$job"
  "$seatcut" solve "$job" --json >"out/$name.json"
  "$seatcut" pack "$job" -o "out/$name-pack.pdf" --csv "out/$name-members.csv" >/dev/null
  "$seatcut" order "$job" --sheet "out/$name-order.xlsx" --labels "out/$name-labels.pdf" >/dev/null
done
printf '\nWritten:\n'
for file in out/*.pdf out/*-members.csv out/*.xlsx out/*.json; do
  printf '  %-30s %8d bytes\n' "$file" "$(wc -c <"$file")"
done

if [ "${SERVE:-yes}" = yes ]; then
  printf '\nThe app, with this roof on its shelf:\n'
  exec "$seatcut" serve --data out/workshop
fi
