#!/bin/sh
# Reads a pack with poppler's tools: A4, tagged, fonts embedded, text to be found.
# Use: scripts/check_pdf.sh PACK.pdf [WORD...]
set -eu
pdf=$1
shift
pdfinfo "$pdf" | grep -q '^Page size: .*(A4)' || { echo "$pdf: not A4" >&2; exit 1; }
pdfinfo "$pdf" | grep -q '^Tagged: *yes' || { echo "$pdf: not tagged" >&2; exit 1; }
# From the third line on; the fifth column from the right says whether a font is embedded.
pdffonts "$pdf" | awk 'NR > 2 { n++; if ($(NF - 4) != "yes") bad++ } END { exit !(n > 0 && bad == 0) }' ||
    { echo "$pdf: a font is not embedded" >&2; exit 1; }
text=$(pdftotext -layout "$pdf" -)
for word in "page 1 of" "$@"; do
    printf '%s' "$text" | grep -qaF -- "$word" || { echo "$pdf: no '$word' in its text" >&2; exit 1; }
done
echo "$pdf: A4, tagged, fonts embedded, text found"
