#!/usr/bin/env bash
# Fuzzes each target for some seconds (60 unless told). A crash is kept in fuzz/artifacts/; once mended,
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
