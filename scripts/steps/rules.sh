# House rules that no compiler checks.
ours() { find . \( -name target -o -name node_modules -o -name dist -o -name .tools -o -name .git -o -name out \) -prune -o -type f \( "$@" \) -print; }
sources() { ours -name '*.rs'; }

LINES_AT_MOST=600 # beyond this a file wants dividing
long=$(sources | xargs wc -l | awk -v most=$LINES_AT_MOST '$2 != "total" && $1 > most { print $2 " (" $1 ")" }')
[ -z "$long" ] || fail "files over $LINES_AT_MOST lines: $long"

unfinished=$(sources | xargs grep -nE 'todo!\(|unimplemented!\(|#\[ignore|\bdbg!\(|FIX''ME|TO''DO' || true)
[ -z "$unfinished" ] || fail "unfinished places: $unfinished"

# Only the crate that speaks to the WebAssembly host may export names; nothing may open an unsafe block.
unsafe=$(sources | xargs grep -nE 'unsafe[[:space:]]*(\{|fn|impl|trait|extern)' || true)
[ -z "$unsafe" ] || fail "unsafe code: $unsafe"

# The pure crates touch no file, clock, thread or screen; their tests may read the examples.
impure=$(for crate in $PURE_CRATES; do
  grep -rnE --exclude=tests.rs 'std::(fs|net|thread|process|env)|std::time::(Instant|SystemTime)|\b(e?println|e?print)!\(' "crates/$crate/src" || true
done)
[ -z "$impure" ] || fail "the pure crates reach outside: $impure"

trailing=$(ours -name '*.rs' -o -name '*.sh' -o -name '*.toml' -o -name '*.md' -o -name '*.mjs' -o -name '*.py' -o -name Makefile |
  xargs grep -nE '[[:blank:]]+$' || true)
[ -z "$trailing" ] || fail "blanks at the end of a line: $trailing"

# Tests from outside are one program per crate; a file that it does not name would never run.
unnamed=$(for all in crates/*/tests/all.rs; do
  for test in "${all%/all.rs}"/*.rs "${all%/all.rs}"/*/mod.rs; do
    [ -f "$test" ] && [ "$test" != "$all" ] || continue
    name=${test%/mod.rs} name=$(basename "$name" .rs)
    grep -qx "mod $name;" "$all" || printf '%s\n' "$test"
  done
done)
[ -z "$unnamed" ] || fail "tests that never run, for want of a line in all.rs: $unnamed"
