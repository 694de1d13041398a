//! Faults of a job file with the lines they are on.

use std::fmt;
use std::ops::Range;

use miette::{Diagnostic, LabeledSpan, MietteHandlerOpts, NamedSource, ReportHandler, SourceCode};

use crate::reading::JobFile;

/// A line longer than this is not shown, only named: it is no job that a
/// person wrote, and would fill the screen.
const SHOW_LINES_UP_TO: usize = 400;

/// All faults of one job file, ready to print.
#[derive(Debug)]
pub struct FaultReport {
    name: String,
    faults: Vec<Shown>,
}

impl FaultReport {
    /// The faults of this file.
    pub fn new(file: &JobFile, faults: impl IntoIterator<Item = job::Fault>) -> Self {
        let text = std::str::from_utf8(&file.bytes).ok();
        let faults = faults.into_iter().map(|fault| Shown::new(&file.name, text, fault)).collect();
        Self { name: file.name.clone(), faults }
    }
}

impl fmt::Display for FaultReport {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let handler = MietteHandlerOpts::new().build();
        for fault in &self.faults {
            writeln!(f, "{}", Printed(&handler, fault))?;
        }
        match self.faults.len() {
            1 => writeln!(f, "{}: 1 fault, nothing was written", self.name),
            many => writeln!(f, "{}: {many} faults, nothing was written", self.name),
        }
    }
}

/// Joins a handler and a fault for `{}`.
struct Printed<'a>(&'a miette::MietteHandler, &'a Shown);

impl fmt::Display for Printed<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.debug(self.1, f)
    }
}

/// One fault in the shape that the printer wants.
#[derive(Debug)]
struct Shown {
    fault: job::Fault,
    place: String,
    source: Option<NamedSource<String>>,
}

impl Shown {
    fn new(name: &str, text: Option<&str>, fault: job::Fault) -> Self {
        let source = text
            .filter(|text| lines_around_are_short(text, &fault.span))
            .map(|text| NamedSource::new(name, text.to_owned()).with_language("toml"));
        let place = format!("{name}:{}:{}", fault.line, fault.column);
        Self { fault, place, source }
    }
}

/// Whether the lines that a snippet would show are short enough for it.
fn lines_around_are_short(text: &str, span: &Range<usize>) -> bool {
    let (Some(before), Some(after)) = (text.get(..span.start), text.get(span.start..)) else {
        return false;
    };
    let near = before.rsplit('\n').take(2).chain(after.split('\n').take(3));
    near.map(str::len).sum::<usize>() <= SHOW_LINES_UP_TO
}

impl fmt::Display for Shown {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.source.is_none() {
            write!(f, "{}: ", self.place)?;
        }
        write!(f, "{}. {}.", self.fault.what, self.fault.why)
    }
}

impl std::error::Error for Shown {}

impl Diagnostic for Shown {
    fn code<'a>(&'a self) -> Option<Box<dyn fmt::Display + 'a>> {
        Some(Box::new(&self.fault.code))
    }

    fn help<'a>(&'a self) -> Option<Box<dyn fmt::Display + 'a>> {
        let nearest = self.fault.nearest.as_ref().map(|word| format!(" Did you mean `{word}`?"));
        Some(Box::new(format!("{}.{}", self.fault.remedy, nearest.unwrap_or_default())))
    }

    fn source_code(&self) -> Option<&dyn SourceCode> {
        self.source.as_ref().map(|source| source as &dyn SourceCode)
    }

    fn labels(&self) -> Option<Box<dyn Iterator<Item = LabeledSpan> + '_>> {
        let label = LabeledSpan::underline(self.fault.span.clone());
        self.source.as_ref().map(|_| Box::new(std::iter::once(label)) as Box<dyn Iterator<Item = LabeledSpan>>)
    }
}
