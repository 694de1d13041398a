# The timbers of seeded ordinary houses, closed and apart by an outside solid library. For tests only: it is neither
# linked nor shipped.
HOUSES=300
SEED=1
venv "$TARGET/solids-oracle-venv" manifold3d==3.5.4 numpy==2.4.6
shipped
"$TARGET/release/examples/solids_for_oracle" $HOUSES $SEED >"$TARGET/oracle-solids.jsonl"
"$TARGET/solids-oracle-venv/bin/python" scripts/oracle_solids.py $HOUSES <"$TARGET/oracle-solids.jsonl"
