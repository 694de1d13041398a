# The PDF packs read back by tools that are not ours.
need pdftotext poppler-utils
shipped
seatcut=$TARGET/release/seatcut
sheets=$TARGET/sheets
mkdir -p "$sheets"
for job in examples/*.toml; do
  pdf=$sheets/$(basename "$job" .toml).pdf
  title=$(sed -n 's/^title = "\(.*\)"$/\1/p' "$job")
  "$seatcut" pack "$job" -o "$pdf" >/dev/null
  say "$(sh scripts/check_pdf.sh "$pdf" "$title" "Cutting list" "print at 100 %")"
done
"$seatcut" card hip --span 5200 --pitch 40 --size 47x150 -o "$sheets/hip.pdf" >/dev/null
say "$(sh scripts/check_pdf.sh "$sheets/hip.pdf" "hip rafter" "4275.5")"
