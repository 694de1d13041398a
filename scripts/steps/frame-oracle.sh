# Plane frames against an outside frame analysis, over seeded random frames. For comparison only: it is neither linked
# nor shipped.
FRAMES=500
SEED=11
venv "$TARGET/frame-oracle-venv" PyNiteFEA==3.2.0 numpy==2.4.6 scipy==1.17.1
shipped
"$TARGET/release/examples/frames_for_oracle" $FRAMES $SEED >"$TARGET/oracle-frames.jsonl"
"$TARGET/frame-oracle-venv/bin/python" scripts/oracle_frames.py $FRAMES <"$TARGET/oracle-frames.jsonl"
