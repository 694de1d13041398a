#!/usr/bin/env bash
# Every check of the project. With arguments, only the steps named.
# Each step is a script of its own in scripts/steps/, and a step that fails does not stop the others.
set -uo pipefail
. "$(dirname "$0")/lib.sh"
cd "$ROOT"

# Cheapest first; the ones that share a build stand together.
STEPS="tools format rules clippy tests doc-tests docs licences advisories
  wasm web release same-bytes bad-input kill app surface-oracle frame-oracle solids-oracle programme-oracle cutting-oracle
  sheets"
[ $# -gt 0 ] && STEPS="$*"

passed=0 failed=0 failures=""
start=$SECONDS
for step in $STEPS; do
  printf '\n== %s\n' "$step"
  began=$SECONDS
  if [ ! -f "scripts/steps/$step.sh" ]; then
    printf '    there is no step of this name; there are: %s\n' "$(cd scripts/steps && echo *.sh | sed 's/\.sh//g')"
    result=FAILED
  elif bash -euo pipefail -c '. scripts/lib.sh; . "scripts/steps/$1.sh"' step "$step"; then
    result=passed
  else
    result=FAILED
  fi
  if [ "$result" = passed ]; then passed=$((passed + 1)); else
    failed=$((failed + 1))
    failures="$failures $step"
  fi
  printf -- '-- %s: %s in %d s\n' "$step" "$result" $((SECONDS - began))
done

printf '\nTime: %d s\n' $((SECONDS - start))
[ -z "$failures" ] || printf 'Failed:%s\n' "$failures"
printf '%d passed, %d failed\n' "$passed" "$failed"
[ "$failed" -eq 0 ]
