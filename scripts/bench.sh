#!/usr/bin/env bash
# Speed: our own benches, then the roof surface beside an outside skeleton library, on the same plans,
# in the same run, on the same machine.
set -euo pipefail
. "$(dirname "$0")/lib.sh"
cd "$ROOT"

PLANS=300
SEED=7
need cc gcc libc6-dev
cargo bench --workspace --bench '*'

printf '\n== roof surface beside an outside skeleton library, %s plans\n' $PLANS
surface_oracle $PLANS $SEED
