#!/usr/bin/env bash
# Ends the workshop in the middle of saves, as a power cut would, and checks that no answered save is lost.
# kill_saves.sh [TIMES], 200 when left out.
set -euo pipefail
. "$(dirname "$0")/lib.sh"
cd "$ROOT"

times=${1:-200}
port=$((20000 + RANDOM % 20000))
shipped
bin=$TARGET/release/examples
work=$(mktemp -d)
server=""
finish() {
  [ -z "$server" ] || kill -9 "$server" 2>/dev/null || true
  rm -rf "$work"
}
trap finish EXIT

open() {
  "$bin/bare" "$work/data" "$port" >"$work/said" 2>&1 &
  server=$!
  # The shell need not tell that it was killed.
  disown "$server"
  for _ in $(seq 100); do
    grep -q 'is open at' "$work/said" && return 0
    sleep 0.05
  done
  cat "$work/said" >&2
  fail "the workshop did not open"
}

for turn in $(seq "$times"); do
  open
  "$bin/saves" until-gone "$port" "$work/answered" &
  savers=$!
  # Between a tenth and half a second into the saves.
  sleep "0.$((10 + RANDOM % 40))"
  kill -9 "$server"
  while kill -0 "$server" 2>/dev/null; do sleep 0.01; done
  server=""
  wait "$savers"
  [ $((turn % 50)) != 0 ] || say "$turn of $times"
done

open
say "ended $times times in the middle of saves: $("$bin/saves" check "$port" "$work/answered")"
