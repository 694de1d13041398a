//! What the app asks with.

use super::{ItemPriceGiven, Offcut, OffcutGiven, RecordGiven, StockPriceGiven};
use serde::{Deserialize, Serialize};

/// How figures and words are shown; a matter of the device, not of the job.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct Settings {
    /// How lengths are written.
    pub lengths: LengthStyle,
    /// Whose words.
    pub words: Dialect,
}

/// How lengths are written.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub enum LengthStyle {
    /// As the job says.
    #[default]
    AsJob,
    /// Millimetres.
    Mm,
    /// Feet, inches and sixteenths.
    FeetInches,
}

/// Whose words for timbers and cuts.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub enum Dialect {
    /// British.
    #[default]
    Uk,
    /// American.
    Us,
}

/// One change of the job. Each gives the whole new text, to be kept.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "do", rename_all = "snake_case")]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub enum Edit {
    /// Sets a key of the job file: `timber.rafter.centres`.
    Set {
        /// Its path.
        path: String,
        /// Its value, as written in a file; texts need no quotes.
        value: String,
    },
    /// Takes a key out, so that its default holds.
    Remove {
        /// Its path.
        path: String,
    },
    /// Sets what one wall does above its plate.
    Wall {
        /// Its letter.
        wall: String,
        /// What it does.
        form: WallForm,
    },
    /// Sets the pitch of one wall, or of the roof when no wall is named.
    Pitch {
        /// Its letter.
        wall: Option<String>,
        /// Degrees.
        pitch_deg: f64,
    },
    /// Sets the height of a ridge by the pitches of the slopes that meet on it.
    RidgeHeight {
        /// Which: the `id` of a ridge of the overview.
        ridge: String,
        /// Height above the datum of the plates, mm.
        height_mm: f64,
    },
    /// Ticks timbers.
    Tick(Tick),
    /// Says what the roof carries and how strong its timber is: keys of `[loads]` and `[strength]`, all at once.
    Carries {
        /// The keys. An empty value takes its key out.
        values: Vec<KeyGiven>,
    },
    /// Writes the price of a stock of timber.
    StockPrice(StockPriceGiven),
    /// Writes the price of something else.
    ItemPrice(ItemPriceGiven),
    /// Reads a price list in. One with faults is refused as a whole.
    PriceList {
        /// Its text.
        text: String,
    },
    /// Puts offcuts into the yard of the job.
    Yard {
        /// The offcuts.
        offcuts: Vec<Offcut>,
    },
    /// Puts one kind of offcut into the yard of the job, as typed.
    YardOne(OffcutGiven),
    /// Writes what people on site say in place of a statement, or in answer to a question.
    Record(RecordGiven),
    /// Chooses what covers the slopes; an empty word takes it out.
    Covering {
        /// Its word.
        of: String,
    },
}

/// A key as typed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct KeyGiven {
    /// Its path: `loads.wind`.
    pub path: String,
    /// Its value, as written in a file; texts need no quotes.
    pub value: String,
}

/// What a wall does above its plate.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub enum WallForm {
    /// A slope rises from it.
    Hip,
    /// It is carried up.
    Gable,
}

/// Ticks timbers as cut, as fixed, or as neither.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct Tick {
    /// Their marks.
    pub marks: Vec<String>,
    /// How far they are.
    pub done: Done,
}

/// How far a timber is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub enum Done {
    /// Still to be cut.
    No,
    /// Cut.
    Cut,
    /// Fixed in the roof.
    Fixed,
}

/// A change that is shown while a finger drags, and not kept: the reply shows
/// the roof as it would be, and the job on the desk stays as it was.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "do", rename_all = "snake_case")]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub enum Nudge {
    /// As [`Edit::Pitch`].
    Pitch {
        /// Its letter.
        wall: Option<String>,
        /// Degrees.
        pitch_deg: f64,
    },
    /// As [`Edit::RidgeHeight`].
    RidgeHeight {
        /// Which.
        ridge: String,
        /// Height above the datum of the plates, mm.
        height_mm: f64,
    },
}

/// Asks for the card of a piece.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct CardAsk {
    /// The mark of a timber, or of its pattern piece.
    pub mark: String,
    /// Width that its picture may take, px.
    pub width: f64,
}

/// Asks for the working of a figure.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct WhyAsk {
    /// The key of the figure, from its `why`.
    pub figure: String,
    /// Width that its picture may take, px.
    pub width: f64,
}

/// A shape that a new job can have.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct ShapeChoice {
    /// Its name.
    pub name: String,
    /// What it is, in one line.
    pub description: String,
    /// Its sizes.
    pub sizes: Vec<ShapeSize>,
    /// Whether its ends may be gables or hips.
    pub gables: bool,
    /// Its outline in a square of 100 px.
    pub picture: picture::Picture,
}

/// A size of a shape.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct ShapeSize {
    /// Its name.
    pub name: String,
    /// What it measures, a phrase.
    pub meaning: String,
    /// What it is when nothing is said, as the user writes lengths.
    pub value: String,
}

/// Asks for the text of a new job.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct NewJob {
    /// A shape of `shapes`.
    pub shape: String,
    /// What the job is called.
    pub title: String,
    /// Sizes that differ from the shape's own.
    pub sizes: Vec<SizeGiven>,
    /// Whether its ends are gables.
    pub gables: bool,
}

/// A size as typed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "bindings", derive(ts_rs::TS))]
pub struct SizeGiven {
    /// Its name.
    pub name: String,
    /// As typed: `8400`, `8.4 m`, `27' 6 1/2"`.
    pub value: String,
}
