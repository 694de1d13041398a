# Spoilt job files through the shipped binary: a message and an exit code, never a fall.
shipped
node scripts/bad_input.mjs "$TARGET/release/seatcut" crates/seatcut/tests/command_line/bad examples/*.toml
