# Natively and in the browser's modules the same job gives the same figures and the same bytes: solution, sheets, list,
# spreadsheet and labels. Compared over the examples and one job of every shape.
shipped
bash scripts/web.sh
seatcut=$TARGET/release/seatcut
jobs=$TARGET/same-bytes
rm -rf "$jobs"
mkdir -p "$jobs"
for shape in $("$seatcut" new --list | sed -n 's/^\([^ ]*\) .*/\1/p'); do
  "$seatcut" new "$shape" -o "$jobs/$shape.toml"
done
node scripts/same_bytes.mjs "$seatcut" examples/*.toml "$jobs"/*.toml
