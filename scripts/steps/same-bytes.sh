# Natively and in WebAssembly the same job gives the same bytes: solution, sheets and list.
cargo build --release -p seatcut --quiet
node scripts/same_bytes.mjs "$TARGET/release/seatcut" \
  "$TARGET/wasm/wasm32-unknown-unknown/release/wasm_check.wasm" examples/*.toml
