//! A spreadsheet file (Office Open XML, ECMA-376 part 1, chapter 18), as small as it can be: words, figures, and
//! formulas with their results. It knows no clock, and its parts are stored without compression, whose output differs
//! between processors: the same sheets give the same bytes everywhere.

use std::io::{Cursor, Write};

use crate::xml;
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, ZipWriter};

/// What a cell holds.
#[derive(Clone, Debug, PartialEq)]
pub enum Value {
    /// Nothing.
    Empty,
    /// Words; never taken for a formula.
    Words(String),
    /// A figure; what is not a number leaves the cell empty.
    Figure(f64),
    /// A formula, without its sign of equality, and its result.
    Formula(String, f64),
}

/// How a cell looks: the number is its place in the table of styles.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(u8)]
pub enum Look {
    /// As it comes.
    Plain,
    /// Head of a column.
    Head,
    /// Bold.
    Strong,
    /// An amount of money.
    Money,
    /// A sum of money.
    MoneyStrong,
    /// A cell to write in: an amount of money.
    MoneyAsked,
    /// A cell to write in: percent, as the figure before the sign.
    PercentAsked,
    /// A figure to a tenth.
    Tenth,
    /// A sum, to a tenth.
    TenthStrong,
}

/// How many looks there are.
const LOOKS: usize = 9;

/// A cell.
#[derive(Clone, Debug, PartialEq)]
pub struct Cell {
    /// What it holds.
    pub value: Value,
    /// How it looks.
    pub look: Look,
}

impl Cell {
    /// Nothing.
    pub const fn empty() -> Self {
        Self { value: Value::Empty, look: Look::Plain }
    }

    /// Words.
    pub fn words(text: impl Into<String>, look: Look) -> Self {
        Self { value: Value::Words(text.into()), look }
    }

    /// A figure.
    pub const fn figure(value: f64, look: Look) -> Self {
        Self { value: Value::Figure(value), look }
    }

    /// A figure, or an empty cell to write one in.
    pub fn figure_or_empty(value: Option<f64>, look: Look) -> Self {
        Self { value: value.map_or(Value::Empty, Value::Figure), look }
    }

    /// A formula and its result.
    pub fn formula(text: impl Into<String>, result: f64, look: Look) -> Self {
        Self { value: Value::Formula(text.into(), result), look }
    }
}

/// A sheet of a file.
#[derive(Clone, Debug, PartialEq)]
pub struct Table {
    /// Its name: at most 31 characters, none of `[]:*?/\`.
    pub name: &'static str,
    /// Width of each column, in characters.
    pub widths: Vec<f64>,
    /// Its rows; the first is its head, and stays in sight.
    pub rows: Vec<Vec<Cell>>,
}

/// Name of a cell by its column and row, from 0: `C7`.
pub fn cell_name(column: usize, row: usize) -> String {
    let mut letters = String::new();
    let mut rest = column + 1;
    while rest > 0 {
        let letter = u8::try_from((rest - 1) % 26).unwrap_or(0);
        letters.insert(0, char::from(b'A' + letter));
        rest = (rest - 1) / 26;
    }
    format!("{letters}{}", row + 1)
}

/// Longest text that a cell holds, characters.
const MOST_WORDS: usize = 32_767;

/// Writes a file.
///
/// # Errors
/// What went wrong in writing it, in words.
pub fn write(tables: &[Table], title: &str, currency: &str) -> Result<Vec<u8>, String> {
    let mut zip = ZipWriter::new(Cursor::new(Vec::new()));
    let how = SimpleFileOptions::DEFAULT.compression_method(CompressionMethod::Stored);
    let mut part = |name: &str, text: &str| -> Result<(), String> {
        zip.start_file(name, how).map_err(|e| e.to_string())?;
        zip.write_all(HEAD.as_bytes()).and_then(|()| zip.write_all(text.as_bytes())).map_err(|e| e.to_string())
    };
    part("[Content_Types].xml", &content_types(tables.len()))?;
    part("_rels/.rels", RELATIONS)?;
    part("docProps/core.xml", &properties(title))?;
    part("xl/workbook.xml", &workbook(tables))?;
    part("xl/_rels/workbook.xml.rels", &workbook_relations(tables.len()))?;
    part("xl/styles.xml", &styles(currency))?;
    for (k, table) in tables.iter().enumerate() {
        part(&format!("xl/worksheets/sheet{}.xml", k + 1), &worksheet(table))?;
    }
    zip.finish().map(Cursor::into_inner).map_err(|e| e.to_string())
}

const HEAD: &str = "<?xml version=\"1.0\" encoding=\"UTF-8\" standalone=\"yes\"?>\n";
const MAIN: &str = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const OFFICE: &str = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const RELATIONS: &str = concat!(
    r#"<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">"#,
    r#"<Relationship Id="rId1" "#,
    r#"Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/officeDocument" "#,
    r#"Target="xl/workbook.xml"/><Relationship Id="rId2" "#,
    r#"Type="http://schemas.openxmlformats.org/package/2006/relationships/metadata/core-properties" "#,
    r#"Target="docProps/core.xml"/></Relationships>"#
);

fn content_types(sheets: usize) -> String {
    let kind = "application/vnd.openxmlformats-officedocument.spreadsheetml";
    let mut out = format!(
        "<Types xmlns=\"http://schemas.openxmlformats.org/package/2006/content-types\"><Default Extension=\"rels\" \
         ContentType=\"application/vnd.openxmlformats-package.relationships+xml\"/><Default Extension=\"xml\" \
         ContentType=\"application/xml\"/><Override PartName=\"/docProps/core.xml\" \
         ContentType=\"application/vnd.openxmlformats-package.core-properties+xml\"/><Override \
         PartName=\"/xl/workbook.xml\" ContentType=\"{kind}.sheet.main+xml\"/><Override PartName=\"/xl/styles.xml\" \
         ContentType=\"{kind}.styles+xml\"/>"
    );
    for k in 1..=sheets {
        out.push_str(&format!(
            "<Override PartName=\"/xl/worksheets/sheet{k}.xml\" ContentType=\"{kind}.worksheet+xml\"/>"
        ));
    }
    out + "</Types>"
}

fn properties(title: &str) -> String {
    format!(
        "<cp:coreProperties xmlns:cp=\"http://schemas.openxmlformats.org/package/2006/metadata/core-properties\" \
         xmlns:dc=\"http://purl.org/dc/elements/1.1/\"><dc:title>{}</dc:title><dc:creator>Seatcut</dc:creator>\
         </cp:coreProperties>",
        escaped(title)
    )
}

fn workbook(tables: &[Table]) -> String {
    let mut out = format!("<workbook xmlns=\"{MAIN}\" xmlns:r=\"{OFFICE}\"><sheets>");
    for (k, table) in tables.iter().enumerate() {
        let n = k + 1;
        out.push_str(&format!("<sheet name=\"{}\" sheetId=\"{n}\" r:id=\"rId{n}\"/>", escaped(table.name)));
    }
    // Results are stored for viewers that work nothing out; a spreadsheet works them out again when it opens the file.
    out + "</sheets><calcPr calcId=\"0\" fullCalcOnLoad=\"1\"/></workbook>"
}

fn workbook_relations(sheets: usize) -> String {
    let mut out = "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\">".to_owned();
    for k in 1..=sheets {
        out.push_str(&format!(
            "<Relationship Id=\"rId{k}\" Type=\"{OFFICE}/worksheet\" Target=\"worksheets/sheet{k}.xml\"/>"
        ));
    }
    out.push_str(&format!(
        "<Relationship Id=\"rId{}\" Type=\"{OFFICE}/styles\" Target=\"styles.xml\"/></Relationships>",
        sheets + 1
    ));
    out
}

/// Two fonts, three fills, and a line of the table for every [`Look`].
fn styles(currency: &str) -> String {
    let sign = escaped(&currency.replace('"', ""));
    // Format, font, fill, border.
    let looks: [[u8; 4]; LOOKS] = [
        [0, 0, 0, 0],
        [0, 1, 2, 0],
        [0, 1, 0, 0],
        [164, 0, 0, 0],
        [164, 1, 0, 0],
        [164, 0, 3, 1],
        [165, 0, 3, 1],
        [166, 0, 0, 0],
        [166, 1, 0, 0],
    ];
    let mut out = format!(
        "<styleSheet xmlns=\"{MAIN}\"><numFmts count=\"3\"><numFmt numFmtId=\"164\" \
         formatCode=\"&quot;{sign}&quot;#,##0.00\"/><numFmt numFmtId=\"165\" formatCode=\"0.0&quot; %&quot;\"/><numFmt \
         numFmtId=\"166\" formatCode=\"#,##0.0\"/></numFmts><fonts count=\"2\"><font><sz val=\"11\"/><name \
         val=\"Calibri\"/></font><font><b/><sz val=\"11\"/><name val=\"Calibri\"/></font></fonts><fills \
         count=\"4\"><fill><patternFill patternType=\"none\"/></fill><fill><patternFill \
         patternType=\"gray125\"/></fill><fill><patternFill patternType=\"solid\"><fgColor \
         rgb=\"FFE4E4E4\"/></patternFill></fill><fill><patternFill patternType=\"solid\"><fgColor \
         rgb=\"FFFFF6CC\"/></patternFill></fill></fills><borders \
         count=\"2\"><border><left/><right/><top/><bottom/><diagonal/></border><border><left style=\"thin\"/><right \
         style=\"thin\"/><top style=\"thin\"/><bottom style=\"thin\"/><diagonal/></border></borders><cellStyleXfs \
         count=\"1\"><xf numFmtId=\"0\" fontId=\"0\" fillId=\"0\" borderId=\"0\"/></cellStyleXfs><cellXfs \
         count=\"{LOOKS}\">"
    );
    for [format, font, fill, border] in looks {
        out.push_str(&format!(
            "<xf numFmtId=\"{format}\" fontId=\"{font}\" fillId=\"{fill}\" borderId=\"{border}\" xfId=\"0\" \
             applyNumberFormat=\"1\" applyFont=\"1\" applyFill=\"1\" applyBorder=\"1\"/>"
        ));
    }
    out + "</cellXfs><cellStyles count=\"1\"><cellStyle name=\"Normal\" xfId=\"0\" builtinId=\"0\"/></cellStyles>\
           </styleSheet>"
}

fn worksheet(table: &Table) -> String {
    let mut out = format!(
        "<worksheet xmlns=\"{MAIN}\"><sheetPr><pageSetUpPr fitToPage=\"1\"/></sheetPr><sheetViews><sheetView \
         workbookViewId=\"0\"><pane ySplit=\"1\" topLeftCell=\"A2\" activePane=\"bottomLeft\" \
         state=\"frozen\"/></sheetView></sheetViews><cols>"
    );
    for (k, width) in table.widths.iter().enumerate() {
        let n = k + 1;
        out.push_str(&format!("<col min=\"{n}\" max=\"{n}\" width=\"{width}\" customWidth=\"1\"/>"));
    }
    out.push_str("</cols><sheetData>");
    for (row, cells) in table.rows.iter().enumerate() {
        out.push_str(&format!("<row r=\"{}\">", row + 1));
        for (column, cell) in cells.iter().enumerate() {
            out.push_str(&written(cell, &cell_name(column, row)));
        }
        out.push_str("</row>");
    }
    out + "</sheetData><pageSetup paperSize=\"9\" orientation=\"landscape\" fitToWidth=\"1\" fitToHeight=\"0\"/>\
           </worksheet>"
}

fn written(cell: &Cell, name: &str) -> String {
    let look = cell.look as u8;
    match &cell.value {
        Value::Words(text) if !text.is_empty() => format!(
            "<c r=\"{name}\" s=\"{look}\" t=\"inlineStr\"><is><t xml:space=\"preserve\">{}</t></is></c>",
            escaped(text)
        ),
        Value::Figure(value) if value.is_finite() => format!("<c r=\"{name}\" s=\"{look}\"><v>{value}</v></c>"),
        Value::Formula(text, result) if result.is_finite() => {
            format!("<c r=\"{name}\" s=\"{look}\"><f>{}</f><v>{result}</v></c>", escaped(text))
        }
        Value::Formula(text, _) => format!("<c r=\"{name}\" s=\"{look}\"><f>{}</f></c>", escaped(text)),
        _ if cell.look == Look::Plain => String::new(),
        _ => format!("<c r=\"{name}\" s=\"{look}\"/>"),
    }
}

/// Text of a cell, no longer than a cell holds.
fn escaped(text: &str) -> String {
    xml::escaped(text.chars().take(MOST_WORDS))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cells_are_named_as_spreadsheets_name_them() {
        let named = [(0, 0), (25, 6), (26, 0), (701, 9), (702, 0)].map(|(column, row)| cell_name(column, row));
        assert_eq!(named, ["A1", "Z7", "AA1", "ZZ10", "AAA1"]);
    }
}
