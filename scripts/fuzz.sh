#!/usr/bin/env bash
# Fuzzes each target for some seconds (60 unless told), then roofs many houses. A crash is kept in fuzz/artifacts/; once mended,
# its input becomes a plain test beside the code.
set -euo pipefail
. "$(dirname "$0")/lib.sh"
cd "$ROOT"

seconds_each=${1:-60}
need c++ g++ libc6-dev
cargo_tool cargo-fuzz 0.13.2
mkdir -p fuzz/corpus/job_text
cp examples/*.toml fuzz/corpus/job_text/
for target in job_text plan; do
  printf '\n== %s for %s s\n' "$target" "$seconds_each"
  # The sanitiser flags are asked of a stable compiler, which is what RUSTC_BOOTSTRAP allows.
  RUSTC_BOOTSTRAP=1 cargo fuzz run "$target" -- -max_total_time="$seconds_each"
done

# Houses from a number that moves on with the day, so that every run sees others; a panic ends it.
first=$(( $(date +%s) / 86400 * 100000 ))
for kind in ordinary wild random; do
  printf '\n== %s houses from %s\n' "$kind" "$first"
  cargo run --release -q -p roof --example houses "$kind" $((seconds_each * 50)) "$first"
done
