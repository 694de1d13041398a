//! Putting the roof up: when, by how many, from what, and what people on site wrote down.

use schemars::JsonSchema;
use std::collections::BTreeMap;

/// A day of the calendar that exists.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Day {
    /// Year, 1900 to 2200.
    pub year: i16,
    /// Month, 1 to 12.
    pub month: i8,
    /// Day of the month, from 1.
    pub day: i8,
}

impl Day {
    /// A day as written, `2027-03-01`; nothing for one that does not exist.
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        let mut parts = text.split('-');
        let mut part = |digits: usize| {
            let part = parts.next().filter(|part| part.len() == digits && part.bytes().all(|b| b.is_ascii_digit()))?;
            part.parse::<i16>().ok()
        };
        let (year, month, day) = (part(4)?, part(2)?, part(2)?);
        let leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
        let last = match month {
            4 | 6 | 9 | 11 => 30,
            2 if leap => 29,
            2 => 28,
            _ => 31,
        };
        let exists = parts.next().is_none()
            && (FIRST_YEAR..=LAST_YEAR).contains(&year)
            && (1..=12).contains(&month)
            && (1..=last).contains(&day);
        if !exists {
            return None;
        }
        Some(Self { year, month: i8::try_from(month).ok()?, day: i8::try_from(day).ok()? })
    }
}

/// First and last year of a day: anything else is a slip.
const FIRST_YEAR: i16 = 1900;
/// See [`FIRST_YEAR`].
const LAST_YEAR: i16 = 2200;

impl core::fmt::Display for Day {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        write!(f, "{:04}-{:02}-{:02}", self.year, self.month, self.day)
    }
}

/// When the roof goes up, and by how many.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct ProgrammeAsked {
    /// The first day on site; days are only numbered without it.
    pub start: Option<Day>,
    /// Carpenters at work together.
    pub crew: u32,
    /// Roofers at work together.
    pub roofers: u32,
    /// Hours of work in a day.
    pub hours_a_day: f64,
    /// Saturdays are worked.
    pub saturdays: bool,
    /// Days on which nobody works besides weekends, in order, each once.
    pub holidays: Vec<Day>,
    /// Share of the working time lost to weather in each month from January, 0 to 0.9.
    pub weather_loss: Option<[f64; 12]>,
    /// Working days in which the scaffold goes up.
    pub scaffold_up: Option<f64>,
    /// Working days in which it comes down.
    pub scaffold_down: Option<f64>,
    /// Hours of one person for one unit of work, where they are not the region's.
    pub hours: BTreeMap<WorkItem, f64>,
}

macro_rules! work_items {
    ($($(#[$doc:meta])* $variant:ident = $word:literal per $unit:literal),+ $(,)?) => {
        /// What hours are given for.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        pub enum WorkItem {
            $($(#[$doc])* $variant),+
        }

        impl WorkItem {
            /// Every item, in the order of the work.
            pub const ALL: &'static [Self] = &[$(Self::$variant),+];

            /// Its key in a job file, and in the hours of a region.
            #[must_use]
            pub const fn word(self) -> &'static str {
                match self { $(Self::$variant => $word),+ }
            }

            /// What one of it is: `each`, `m` or `m²`.
            #[must_use]
            pub const fn unit(self) -> &'static str {
                match self { $(Self::$variant => $unit),+ }
            }

            /// The item of a word.
            #[must_use]
            pub fn from_word(word: &str) -> Option<Self> {
                Self::ALL.iter().copied().find(|item| item.word() == word)
            }
        }
    };
}

work_items! {
    /// Wall plates bedded, halved and straightened.
    Plate = "plate_m" per "m",
    /// Holding-down and gable straps.
    Strap = "strap_each" per "each",
    /// Common and crown rafters, cut and pitched.
    Rafter = "rafter_each" per "each",
    /// Jacks, valley jacks and cripples, cut and pitched.
    Jack = "jack_each" per "each",
    /// Hips and valleys, set out, cut and pitched.
    Hip = "hip_each" per "each",
    /// Ridge boards, cut and propped.
    Ridge = "ridge_m" per "m",
    /// Purlins.
    Purlin = "purlin_m" per "m",
    /// Struts and hangers.
    Strut = "strut_each" per "each",
    /// Collars.
    Collar = "collar_each" per "each",
    /// Ceiling joists.
    CeilingJoist = "ceiling_joist_each" per "each",
    /// Binders.
    Binder = "binder_m" per "m",
    /// Angle and dragon ties.
    Tie = "tie_each" per "each",
    /// Openings, trimmed.
    Opening = "opening_each" per "each",
    /// Dormers, besides their timbers.
    Dormer = "dormer_each" per "each",
    /// Rungs of gable ladders, noggins and sprockets.
    Noggin = "noggin_each" per "each",
    /// Fascia, soffit, barge and lay boards, fillets.
    Board = "board_m" per "m",
    /// Underlay and battens.
    UnderlayBattens = "underlay_battens_m2" per "m²",
    /// The covering itself.
    Covering = "covering_m2" per "m²",
    /// Lead and cappings of ridges, hips, valleys and verges, and gutters.
    Edge = "edge_m" per "m",
}

/// What the roof is put up from, and what is known of the site.
#[derive(Clone, Debug, PartialEq)]
pub struct AccessAsked {
    /// What sort; what the roof suggests when nothing is said.
    pub kind: Option<AccessKind>,
    /// Load class of the working platform, 1 to 6.
    pub class: u32,
    /// Length of a bay along the wall, mm.
    pub bay: f64,
    /// Boards side by side.
    pub boards: u32,
    /// Greatest height of a lift, mm.
    pub lift: f64,
    /// Height of the plates above the ground, mm; of those on the datum of the job.
    pub plate_height: Option<f64>,
    /// People on one platform at once; everyone at work when nothing is said.
    pub people: Option<u32>,
    /// Timbers that stand as one stack on the platform.
    pub stack: u32,
    /// Price of putting up, the weeks within it, and taking down.
    pub hire: Option<f64>,
    /// Weeks of hire within that price.
    pub hire_weeks: u32,
    /// Price of each week more.
    pub extra_week: Option<f64>,
    /// The ground it stands on.
    pub ground: Option<Ground>,
    /// People pass by below.
    pub passers_by: Option<bool>,
    /// It stands on a pavement or road.
    pub on_pavement: Option<bool>,
    /// Electric lines run overhead.
    pub overhead_lines: Option<bool>,
    /// It is sheeted, or stands under a roof of its own.
    pub sheeted: bool,
}

impl AccessAsked {
    /// What holds when a file says nothing of it: that of the keys.
    #[must_use]
    pub const fn plain() -> Self {
        Self {
            kind: None,
            class: 3,
            bay: 2000.0,
            boards: 5,
            lift: 2000.0,
            plate_height: None,
            people: None,
            stack: 20,
            hire: None,
            hire_weeks: 6,
            extra_week: None,
            ground: None,
            passers_by: None,
            on_pavement: None,
            overhead_lines: None,
            sheeted: false,
        }
    }
}

/// A sort of access.
#[derive(Clone, Copy, Debug, PartialEq, Eq, JsonSchema)]
#[schemars(rename_all = "kebab-case")]
pub enum AccessKind {
    /// An independent scaffold round the building.
    Scaffold,
    /// A mobile tower.
    Tower,
    /// Guard rails at the eaves, reached some other way.
    EdgeProtection,
}

/// What a scaffold stands on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, JsonSchema)]
#[schemars(rename_all = "kebab-case")]
pub enum Ground {
    /// Firm and level.
    Firm,
    /// Soft, or lately filled.
    Soft,
    /// On a slope.
    Sloping,
}
