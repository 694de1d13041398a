//! What may be written for a key, and the words for it.

use super::FORMAT;
use crate::limits::Limits;

/// What may be written for a key.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Kind {
    /// The number of the format.
    Format,
    /// A line of text.
    Text,
    /// The name of a folder.
    Folder,
    /// A length.
    Length(Limits),
    /// Lengths in rising order, as many as are wanted.
    Lengths(Limits),
    /// Lengths in the order of the plan.
    Sides(Limits),
    /// A pitch.
    Pitch(Limits),
    /// An angle that is no pitch.
    Angle(Limits),
    /// A whole number.
    Count(Limits),
    /// A number of some other unit, which is named; money has none here.
    Figure(Limits, &'static str),
    /// Numbers of some other unit, as many as are wanted.
    Figures(Limits, &'static str),
    /// A day of the calendar.
    Date,
    /// Days of the calendar.
    Dates,
    /// A number of some unit for each month, or one for all.
    Months(Limits, &'static str),
    /// A text of some lines.
    Statement,
    /// A word of a choice.
    Word(fn() -> Vec<&'static str>),
    /// Yes or no.
    Flag,
    /// Thickness and depth.
    Size,
    /// The letter of a wall.
    Wall,
    /// Letters of corners.
    Letters,
    /// A place on the plan.
    Point,
    /// A loop of corners.
    Corners,
    /// Loops of corners.
    Loops,
}

/// What holds when a key is left out.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Preset {
    /// It may not be left out. An example, as TOML.
    Required(&'static str),
    /// Its group says nothing then; whatever else stands in the group needs
    /// it. An example, as TOML.
    Part(&'static str),
    /// Nothing, or what the text says. An example, as TOML.
    Otherwise(&'static str, &'static str),
    /// A number, mm or degrees.
    Number(f64),
    /// Two numbers, mm.
    Pair([f64; 2]),
    /// A word or text.
    Word(&'static str),
    /// Yes or no.
    Flag(bool),
    /// An empty list.
    Empty,
}

impl Kind {
    /// What is wanted, after "wants".
    pub(crate) fn wanted(&self) -> &'static str {
        match self {
            Self::Format => "the number of a format",
            Self::Text | Self::Statement => "a text",
            Self::Date => "a day",
            Self::Dates => "a list of days",
            Self::Months(..) => "a number, or twelve",
            Self::Folder => "the name of a region",
            Self::Length(_) => "a length",
            Self::Lengths(_) | Self::Sides(_) => "a list of lengths",
            Self::Angle(_) => "an angle in degrees",
            Self::Letters => "a list of letters of corners",
            Self::Pitch(_) => "a pitch",
            Self::Count(_) => "a whole number",
            Self::Figure(..) => "a number",
            Self::Figures(..) => "a list of numbers",
            Self::Word(_) => "a word",
            Self::Flag => "true or false",
            Self::Size => "a size of two lengths",
            Self::Wall => "the letter of a wall",
            Self::Point => "a place of two lengths",
            Self::Corners => "a list of corners",
            Self::Loops => "a list of courtyards",
        }
    }

    /// What to write, a sentence without its stop.
    pub(crate) fn remedy(&self) -> String {
        match self {
            Self::Format => format!("Write {FORMAT}"),
            Self::Text => "Write a text in quotes, on one line".to_owned(),
            Self::Statement => "Write a text in quotes".to_owned(),
            Self::Date => "Write year, month and day, such as 2027-03-01".to_owned(),
            Self::Dates => "Write days in brackets, such as [2027-03-26, 2027-03-29]".to_owned(),
            Self::Months(limits, unit) => {
                format!(
                    "Write {unit} as a number from {} to {}, or twelve of them in brackets",
                    limits.least, limits.most
                )
            }
            Self::Folder => "Write small letters, digits and dashes in quotes, such as \"uk\"".to_owned(),
            Self::Length(_) => "Write millimetres as a number, or a text with a unit such as \"8.4 m\"".to_owned(),
            Self::Lengths(_) => "Write lengths in brackets, such as [1800, 3600]".to_owned(),
            Self::Sides(_) => "Write lengths in brackets, going round, such as [8400, 5200, 8400, 5200]".to_owned(),
            Self::Angle(_) => "Write degrees as a number, such as 90".to_owned(),
            Self::Letters => "Write letters in quotes and brackets, such as [\"C\"]".to_owned(),
            Self::Pitch(_) => "Write degrees as a number, or a text such as \"40°\" or \"6:12\"".to_owned(),
            Self::Count(limits) => format!("Write a whole number from {} to {}", limits.least, limits.most),
            Self::Figure(limits, "") => {
                format!("Write a number from {} to {}, without quotes", limits.least, limits.most)
            }
            Self::Figure(limits, unit) => {
                format!("Write {unit} as a number from {} to {}, without quotes", limits.least, limits.most)
            }
            Self::Figures(..) => "Write numbers in brackets, such as [11.52, 13.44]".to_owned(),
            Self::Word(words) => format!("Write {}", either(&words())),
            Self::Flag => "Write true or false, without quotes".to_owned(),
            Self::Size => "Write two lengths in brackets, such as [47, 150]".to_owned(),
            Self::Wall => "Write its letter in quotes, such as \"A\"".to_owned(),
            Self::Point => "Write two lengths in brackets, east and north, such as [4200, 2600]".to_owned(),
            Self::Corners => "Write corners in brackets, such as [[0, 0], [8400, 0], [8400, 5200]]".to_owned(),
            Self::Loops => {
                "Write lists of corners in brackets, such as [[[2000, 2000], [2000, 3000], [3000, 3000]]]".to_owned()
            }
        }
    }
}

/// Words in quotes with "or" before the last.
pub(crate) fn either(words: &[&str]) -> String {
    match words {
        [] => String::new(),
        [only] => format!("\"{only}\""),
        [first @ .., last] => {
            let first: Vec<String> = first.iter().map(|word| format!("\"{word}\"")).collect();
            format!("{} or \"{last}\"", first.join(", "))
        }
    }
}
