# The roof surface against an outside skeleton library, over seeded random plans.
PLANS=300
SEED=7
python=$(oracle_python)
plans=$TARGET/oracle-plans.jsonl
cargo run --release --quiet -p geometry --example plans_for_oracle -- $PLANS $SEED >"$plans"
"$python" scripts/oracle_surface.py <"$plans"
