#!/usr/bin/env bash
# Speed: our own benches, then the roof surface beside an outside skeleton library and cutting plans beside an outside
# solver, on the same cases, in the same run, on the same machine.
set -euo pipefail
. "$(dirname "$0")/lib.sh"
cd "$ROOT"

PLANS=300
SEED=7
ROOFS=150
need cc gcc libc6-dev
cargo bench --workspace --bench '*'

printf '\n== roof surface beside an outside skeleton library, %s plans\n' $PLANS
surface_oracle $PLANS $SEED
printf '\n== the same for rings of 1,000 corners, 3 plans\n'
# For speed only: the library rounds corners to 32 bits, tenths of a millimetre at this size, and heights follow.
surface_oracle 3 $SEED 1000 || true

printf '\n== cutting plans beside a general MILP solver without shared cuts, %s roofs of up to 120 and of up to 500 pieces\n' $ROOFS
cutting_oracle $ROOFS $SEED 120
cutting_oracle $ROOFS $SEED 500
