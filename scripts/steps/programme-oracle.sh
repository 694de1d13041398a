# The programme against general libraries: networks, percentiles and the calendar file. For comparison only: they are
# neither linked nor shipped.
NETWORKS=300
venv "$TARGET/programme-oracle-venv" networkx==3.6.1 numpy==2.4.6 scipy==1.17.1 icalendar==7.3.2
shipped
"$TARGET/release/examples/programme_for_oracle" examples/whole-house.toml $NETWORKS >"$TARGET/oracle-programme.jsonl"
"$TARGET/programme-oracle-venv/bin/python" scripts/oracle_programme.py $NETWORKS <"$TARGET/oracle-programme.jsonl"
