#!/usr/bin/env bash
# Speed: our own benches, then the roof surface beside an outside skeleton library, on the same plans,
# in the same run, on the same machine.
set -euo pipefail
. "$(dirname "$0")/lib.sh"
cd "$ROOT"

PLANS=300
SEED=7
need cc gcc libc6-dev
cargo bench --workspace --benches

printf '\n== roof surface beside an outside skeleton library\n'
python=$(oracle_python)
plans=$TARGET/bench-plans.jsonl
cargo run --release --quiet -p geometry --example plans_for_oracle -- $PLANS $SEED >"$plans"
cargo run --release --quiet -p trials --example time_surfaces <"$plans" >"$TARGET/bench-ours.jsonl"
"$python" scripts/bench_outside.py "$plans" "$TARGET/bench-ours.jsonl"
