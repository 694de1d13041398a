# Natively and in WebAssembly the same job gives the same bytes: solution, sheets and list.
# Compared over the examples and one job of every shape.
shipped
seatcut=$TARGET/release/seatcut
jobs=$TARGET/same-bytes
rm -rf "$jobs"
mkdir -p "$jobs"
for shape in $("$seatcut" new --list | sed -n 's/^\([^ ]*\) .*/\1/p'); do
  "$seatcut" new "$shape" -o "$jobs/$shape.toml"
done
node scripts/same_bytes.mjs "$seatcut" "$TARGET/wasm/$WASM/web/wasm_check.wasm" \
  examples/*.toml "$jobs"/*.toml
