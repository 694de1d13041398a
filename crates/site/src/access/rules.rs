//! Figures for access of a region: `regions/<region>/access.toml`.

use super::AccessFault;
use super::statement::Basis;
use roof::rules::Standing;
use serde::Deserialize;
use std::collections::BTreeMap;
use std::sync::OnceLock;

/// The figures of the United Kingdom.
const UK: &str = include_str!("../../../../regions/uk/access.toml");
/// The figures of the United States.
const US: &str = include_str!("../../../../regions/us/access.toml");

/// A figure with its unit and where it is from.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Figure {
    /// In `unit`, as its source has it.
    pub value: f64,
    /// Its unit.
    pub unit: Unit,
    /// Title and table or clause.
    pub source: String,
    /// How it was come by.
    pub standing: Standing,
}

/// A unit as sources have it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[allow(missing_docs, reason = "units as they are written")]
pub enum Unit {
    #[serde(rename = "mm")]
    Mm,
    #[serde(rename = "m")]
    M,
    #[serde(rename = "in")]
    Inch,
    #[serde(rename = "ft")]
    Foot,
    #[serde(rename = "deg")]
    Deg,
    #[serde(rename = "kg")]
    Kg,
    #[serde(rename = "lb")]
    Pound,
    #[serde(rename = "kN")]
    KiloNewton,
    #[serde(rename = "kN/m2")]
    KiloNewtonPerM2,
    #[serde(rename = "psf")]
    PoundPerFoot2,
    #[serde(rename = "kg/m3")]
    KgPerM3,
    #[serde(rename = "mph")]
    Mph,
    #[serde(rename = "m/s")]
    MetrePerSecond,
    #[serde(rename = "cm2")]
    Cm2,
    #[serde(rename = "days")]
    Days,
    #[serde(rename = "h")]
    Hours,
    #[serde(rename = "min")]
    Minutes,
    #[serde(rename = "months")]
    Months,
    #[serde(rename = "people")]
    People,
    /// Times.
    #[serde(rename = "x")]
    Times,
}

impl Unit {
    /// How it is written after a figure; empty for times.
    #[must_use]
    pub const fn written(self) -> &'static str {
        match self {
            Self::Mm => "mm",
            Self::M => "m",
            Self::Inch => "in",
            Self::Foot => "ft",
            Self::Deg => "°",
            Self::Kg => "kg",
            Self::Pound => "lb",
            Self::KiloNewton => "kN",
            Self::KiloNewtonPerM2 => "kN/m²",
            Self::PoundPerFoot2 => "lb/ft²",
            Self::KgPerM3 => "kg/m³",
            Self::Mph => "mph",
            Self::MetrePerSecond => "m/s",
            Self::Cm2 => "cm²",
            Self::Days => "days",
            Self::Hours => "hours",
            Self::Minutes => "minutes",
            Self::Months => "months",
            Self::People => "people",
            Self::Times => "",
        }
    }

    /// By what a value is multiplied to be in mm, kN/m², m/s or as it is.
    ///
    /// Source: the inch is 25.4 mm; 1 lb/ft² is 0.0478803 kN/m²; 1 mph is 0.44704 m/s.
    const fn to_own(self) -> f64 {
        match self {
            Self::M => 1000.0,
            Self::Inch => 25.4,
            Self::Foot => 304.8,
            Self::PoundPerFoot2 => 0.047_880_3,
            Self::Mph => 0.447_04,
            Self::Pound => 0.453_592_37,
            _ => 1.0,
        }
    }
}

impl Figure {
    /// In our own unit: mm, kN/m², kN, m/s, kg, degrees or a number.
    #[must_use]
    pub fn own(&self) -> f64 {
        self.value * self.unit.to_own()
    }

    /// With its unit, as the source has it.
    #[must_use]
    pub fn written(&self) -> String {
        let figure = plain(self.value);
        match self.unit {
            Unit::Deg => format!("{figure}°"),
            Unit::Times => figure,
            unit => format!("{figure} {}", unit.written()),
        }
    }

    /// Where it stands.
    #[must_use]
    pub fn basis(&self) -> Basis {
        self.standing.into()
    }
}

/// A figure without zeros that say nothing.
pub(crate) fn plain(value: f64) -> String {
    let text = job::written::fixed(value, 3);
    if !text.contains('.') {
        return text;
    }
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// A load class of platforms.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct LoadClass {
    /// Its name where it is used.
    pub name: String,
    /// The classes of a job file that mean it.
    pub job: Vec<u32>,
    /// What it is for.
    #[serde(rename = "use")]
    pub purpose: String,
    /// Spread all over the platform.
    pub spread: Figure,
    /// On a patch 500 mm square.
    #[serde(default)]
    pub patch: Option<Figure>,
    /// Spread over a part of the platform.
    #[serde(default)]
    pub part: Option<Figure>,
    /// Share of the platform that the part is.
    #[serde(default)]
    pub part_area: Option<Figure>,
}

/// A width class of platforms.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WidthClass {
    /// Its name.
    pub name: String,
    /// Least width.
    pub least: Figure,
}

/// A class of temporary edge protection.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct EdgeClass {
    /// Its name.
    pub name: String,
    /// Steepest slope for any fall.
    pub steepest: Figure,
    /// Steepest slope for a short fall.
    #[serde(default)]
    pub steepest_short: Option<Figure>,
    /// The greatest fall that is short.
    #[serde(default)]
    pub short_fall: Option<Figure>,
}

/// Figures of a region.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Rules {
    /// By name.
    pub figures: BTreeMap<String, Figure>,
    /// Load classes, the lightest first.
    #[serde(rename = "class")]
    pub classes: Vec<LoadClass>,
    /// Width classes, the narrowest first.
    #[serde(rename = "width", default)]
    pub widths: Vec<WidthClass>,
    /// Classes of edge protection, for the flattest first.
    #[serde(rename = "edge", default)]
    pub edges: Vec<EdgeClass>,
}

macro_rules! needed {
    ($($(#[$doc:meta])* $name:ident = $key:literal),+ $(,)?) => {
        /// Figures that every region has.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub enum Needed { $($(#[$doc])* $name),+ }

        impl Needed {
            /// Every one.
            pub const ALL: &'static [Self] = &[$(Self::$name),+];

            /// Its name in the file.
            #[must_use]
            pub const fn key(self) -> &'static str {
                match self { $(Self::$name => $key),+ }
            }
        }
    };
}

needed! {
    /// Width of one board.
    BoardWidth = "board-width",
    /// Least height of the top guard rail.
    GuardrailTop = "guardrail-top-min",
    /// Least height of toe boards.
    ToeBoard = "toe-board-min",
    /// Widest gap between platform and wall.
    WallGap = "wall-gap-max",
    /// Days between inspections.
    InspectInterval = "inspect-interval",
    /// Ladder from level.
    LadderAngle = "ladder-angle",
    /// Ladder above its landing.
    LadderAbove = "ladder-above-landing",
    /// Height of a free tower by its least base.
    TowerRatio = "tower-ratio-outdoor",
    /// Wind at which to take care.
    WindCare = "wind-care",
    /// Wind at which to stop.
    WindStop = "wind-stop",
    /// Weight of a person with tools.
    Person = "person",
    /// Working platform below the lower of plate and eaves.
    BelowEaves = "platform-below-eaves",
    /// Inside of the scaffold clear of the roof's edge.
    ClearOfEaves = "clear-of-eaves",
    /// How far above a platform people work.
    Reach = "reach-above-platform",
    /// Height of plates where a job says nothing.
    AssumedPlate = "assumed-plate-height",
    /// Weight of timber.
    Density = "timber-density",
    /// Weight of a plain tile.
    Tile = "tile",
    /// Walkway past what is stored.
    Walkway = "walkway",
    /// Speed of a piece knocked sideways.
    OffcutSpeed = "offcut-speed",
    /// Area of a sole board on soft ground.
    SoleBoard = "sole-board-area",
    /// Longest run that a tower serves.
    TowerRun = "tower-run-max",
    /// Highest platform for which a tower is suggested.
    TowerPlatform = "tower-platform-max",
}

impl Rules {
    /// The figures of a region, as named by [`job::Job::region`].
    ///
    /// # Errors
    /// A region that has none.
    pub fn of(region: &str) -> Result<&'static Self, AccessFault> {
        static READ_UK: OnceLock<Result<Rules, AccessFault>> = OnceLock::new();
        static READ_US: OnceLock<Result<Rules, AccessFault>> = OnceLock::new();
        let read = match region {
            "uk" => READ_UK.get_or_init(|| Rules::read(UK)),
            "us" => READ_US.get_or_init(|| Rules::read(US)),
            other => return Err(AccessFault::NoRegion(other.to_owned())),
        };
        read.as_ref().map_err(Clone::clone)
    }

    /// Read the text of a file of figures.
    ///
    /// # Errors
    /// Anything missing, unknown or not in order.
    pub fn read(text: &str) -> Result<Self, AccessFault> {
        let rules: Self = toml::from_str(text).map_err(|e| AccessFault::Unreadable(e.to_string()))?;
        for needed in Needed::ALL {
            if !rules.figures.contains_key(needed.key()) {
                return Err(AccessFault::Unreadable(format!("figures.{} is missing", needed.key())));
            }
        }
        if rules.classes.is_empty() {
            return Err(AccessFault::Unreadable("there is no [[class]]".to_owned()));
        }
        Ok(rules)
    }

    /// A figure that every region has.
    ///
    /// # Errors
    /// Never for figures that were read; a name that is not there otherwise.
    pub fn need(&self, needed: Needed) -> Result<&Figure, AccessFault> {
        let missing = || AccessFault::Unreadable(format!("figures.{} is missing", needed.key()));
        self.figures.get(needed.key()).ok_or_else(missing)
    }

    /// A figure that a region may have.
    #[must_use]
    pub fn get(&self, name: &str) -> Option<&Figure> {
        self.figures.get(name)
    }

    /// The load class that a job means; the heaviest for one past the end.
    #[must_use]
    pub fn class(&self, class: u32) -> Option<&LoadClass> {
        self.classes.iter().find(|one| one.job.contains(&class)).or_else(|| self.classes.last())
    }

    /// The widest class that a width in mm reaches.
    #[must_use]
    pub fn width(&self, width: f64) -> Option<&WidthClass> {
        self.widths.iter().rev().find(|one| width >= one.least.own())
    }

    /// The least class of edge protection for a slope in degrees and a fall in mm.
    #[must_use]
    pub fn edge(&self, slope: f64, fall: f64) -> Option<&EdgeClass> {
        let short = |one: &EdgeClass| {
            let pair = one.steepest_short.as_ref().zip(one.short_fall.as_ref());
            pair.is_some_and(|(steepest, most)| slope <= steepest.own() && fall < most.own())
        };
        self.edges.iter().find(|one| slope <= one.steepest.own() || short(one))
    }
}
