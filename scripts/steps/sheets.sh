# The PDF pack read back by tools that are not ours.
need pdftotext poppler-utils
bash scripts/check_pdf.sh
