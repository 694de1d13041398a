//! Figures of coverings: `regions/<region>/coverings.toml`, compiled in.

use super::fault::CoverFault;
use serde::Deserialize;
use std::collections::BTreeMap;
use std::sync::OnceLock;
pub use strength::annex::{Figure, Standing};

const UK: &str = include_str!("../../../../regions/uk/coverings.toml");
const US: &str = include_str!("../../../../regions/us/coverings.toml");

/// Everything about coverings that depends on the region.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Coverings {
    /// What the figures are from.
    pub edition: String,
    /// Figures for every covering.
    pub common: Common,
    /// Where battens are joined.
    pub joints: Joints,
    /// Sizes of battens; none where coverings lie on boards.
    #[serde(default)]
    pub battens: Vec<BattenSize>,
    /// The underlay.
    pub underlay: Underlay,
    /// Slots that air the roof; none where the rule is a share of the floor.
    pub ventilation: Option<Ventilation>,
    /// Air as a share of the floor under the roof.
    pub ventilation_share: Option<VentilationShare>,
    /// Coverings by name.
    pub coverings: BTreeMap<String, Covering>,
}

/// Figures for every covering; lengths in mm.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Common {
    /// How far the eaves course hangs into the gutter, past the fascia or the tails.
    pub eaves_overhang: Figure,
    /// How far the covering hangs past the barge board or the last timber of the verge.
    pub verge_overhang: Figure,
    /// How far an upper slope hangs over the lower one where the pitch breaks.
    pub break_overhang: Figure,
    /// Head of the top course below the line where the slopes meet.
    pub top_batten: Figure,
    /// Least length of a batten.
    pub batten_least_length: Figure,
    /// Least number of rafters under a batten.
    pub batten_least_supports: Figure,
    /// Least diameter of batten nails.
    pub batten_nail: Figure,
    /// Density of battens, kg/m³.
    pub batten_density: Figure,
    /// Share ordered for breakage on a roof without hips or valleys.
    pub breakage_plain: Figure,
    /// The same with hips or valleys.
    pub breakage_cut: Figure,
    /// What the hole of a centre-nailed slate lies above the head of the slate two courses below.
    pub holing_extra: Figure,
    /// Hole of a head-nailed slate from its head.
    pub hole_from_head: Figure,
    /// What a ridge or hip piece covers along the line.
    pub ridge_piece: Figure,
    /// Weight of one, kg.
    pub ridge_piece_weight: Figure,
    /// Length of a piece of valley lining.
    pub valley_length: Figure,
    /// Lap of valley lining.
    pub valley_lap: Figure,
    /// What boards that are laid slantwise want more, as a share.
    pub diagonal_boards: Option<Between>,
}

/// Two ends of what is usual.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Between {
    /// From.
    pub low: f64,
    /// To.
    pub high: f64,
    /// Title and table or clause.
    pub source: String,
    /// How it was come by.
    pub standing: Standing,
}

/// How many joints of battens may lie over one rafter.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Joints {
    /// The gauge that parts the two rules, mm.
    pub gauge: Figure,
    /// Above it.
    pub over: Share,
    /// Up to it.
    pub up_to: Share,
}

/// So many among so many.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Share {
    /// At most this many …
    pub most: u32,
    /// … among this many.
    pub among: u32,
    /// Title and table or clause.
    pub source: String,
    /// How it was come by.
    pub standing: Standing,
}

/// What the table of battens calls a covering.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum BattenKind {
    /// Natural slates, sized or random.
    NaturalSlate,
    /// Slates of fibre cement or concrete.
    FibreOrConcreteSlate,
    /// Plain tiles.
    TileDoubleLap,
    /// Interlocking tiles and pantiles.
    TileSingleLap,
}

/// One line of the table of battens, mm.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BattenSize {
    /// For what.
    pub kind: BattenKind,
    /// Up to this distance between the middles of rafters.
    pub span: f64,
    /// Thickness.
    pub thickness: f64,
    /// Width.
    pub width: f64,
    /// Title and table or clause.
    pub source: String,
    /// How it was come by.
    pub standing: Standing,
}

/// The underlay, mm.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Underlay {
    /// Width of a roll.
    pub width: Figure,
    /// Length of a roll.
    pub length: Figure,
    /// kg/m².
    pub weight: Figure,
    /// Lap where a roll ends.
    pub side_lap: Figure,
    /// How far it is taken over a ridge from either side.
    pub over_ridge: Figure,
    /// How far it is taken over a hip or into a valley from either side.
    pub over_hip: Figure,
    /// Head laps, from the flattest pitch up.
    pub laps: Vec<UnderlayLap>,
}

/// Head lap of the underlay from a pitch on, mm.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct UnderlayLap {
    /// From this pitch on, degrees.
    pub from_pitch: f64,
    /// Draped over rafters.
    pub open: f64,
    /// On boards.
    pub supported: f64,
    /// Title and table or clause.
    pub source: String,
    /// How it was come by.
    pub standing: Standing,
}

/// Slots that air the roof, mm along the whole edge.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Ventilation {
    /// At eaves.
    pub eaves: Figure,
    /// At the eaves of a flat pitch.
    pub eaves_flat: Figure,
    /// A pitch is flat up to this, degrees.
    pub flat_up_to: Figure,
    /// At the ridge where one is needed.
    pub ridge: Figure,
    /// A ridge slot is needed from this pitch on, degrees.
    pub ridge_from_pitch: Figure,
    /// A ridge slot is needed from this span on.
    pub ridge_from_span: Figure,
    /// At the top of a slope that ends at a wall.
    pub lean_to_top: Figure,
    /// Clear above the insulation.
    pub over_insulation: Figure,
}

/// Air as a share of the floor under the roof.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct VentilationShare {
    /// The rule.
    pub whole: Figure,
    /// With high and low vents and a vapour retarder.
    pub reduced: Figure,
}

/// How pieces lap.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Way {
    /// Over the course below: interlocking tiles, pantiles.
    Single,
    /// Over the two courses below: plain tiles, slates.
    Double,
    /// Over the three courses below: shingles.
    Triple,
    /// Sheets that are cut to equal lengths.
    Sheet,
}

/// How joints of a course lie over those of the next.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Bond {
    /// In one line.
    Straight,
    /// Half a piece on.
    Half,
}

/// Where a piece hangs on its batten.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Hung {
    /// By its nibs or nails at the head.
    Head,
    /// By nails near its middle.
    Centre,
}

/// A covering; lengths in mm, weights in kg.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Covering {
    /// What it is called.
    pub called: String,
    /// How pieces lap.
    pub way: Way,
    /// How joints lie.
    pub bond: Bond,
    /// Where a piece hangs.
    pub hung: Hung,
    /// Its line in the table of battens; none on boards and rails.
    pub battens: Option<BattenKind>,
    /// Length of a piece; of a sheet, the longest.
    pub length: Figure,
    /// Width of a piece.
    pub width: Figure,
    /// What of the width shows, where it is less.
    pub cover_width: Option<Figure>,
    /// Least head lap from a pitch on, the flattest first.
    pub laps: Vec<LapStep>,
    /// The most gauge, where it is less than the lap allows.
    pub most_gauge: Option<Figure>,
    /// The least gauge.
    pub least_gauge: Option<Figure>,
    /// Weight of a piece.
    pub weight: Option<Figure>,
    /// Weight of a square metre: of the slope, or of the sheet.
    pub weight_per_area: Option<Figure>,
    /// Length of the short piece at eaves and top; without it whole ones are cut.
    pub short_length: Option<Figure>,
    /// Width of the wide piece for verges, in widths of a piece.
    pub wide: Option<Figure>,
    /// Nails for a piece that is nailed.
    pub nails: Option<Figure>,
    /// Of so many courses one is nailed.
    pub nail_every: Option<Figure>,
    /// Screws for each m² of slope.
    pub fixings_per_area: Option<Figure>,
    /// Distance of rails under sheets.
    pub rails: Option<Figure>,
    /// What a ridge or hip piece covers, where it is not the usual one.
    pub ridge_piece: Option<Figure>,
    /// Weight of one.
    pub ridge_piece_weight: Option<Figure>,
    /// An undercloak is bedded at verges.
    #[serde(default)]
    pub undercloak: bool,
    /// Pieces come in random sizes.
    #[serde(default)]
    pub random: bool,
}

/// Least head lap from a pitch on.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct LapStep {
    /// From this pitch on, degrees.
    pub from_pitch: f64,
    /// mm.
    pub lap: f64,
    /// Title and table or clause.
    pub source: String,
    /// How it was come by.
    pub standing: Standing,
}

impl Coverings {
    /// The figures of a region.
    ///
    /// # Errors
    /// When there are none for it.
    pub fn of(region: &str) -> Result<&'static Self, CoverFault> {
        static READ: OnceLock<[Result<Coverings, String>; 2]> = OnceLock::new();
        let [uk, us] = READ.get_or_init(|| [UK, US].map(|text| toml::from_str(text).map_err(|e| e.to_string())));
        let read = match region {
            "uk" => uk,
            "us" => us,
            _ => return Err(CoverFault::NoRegion(region.to_owned())),
        };
        read.as_ref().map_err(|why| CoverFault::Unreadable(why.clone()))
    }

    /// Head lap of the underlay at a pitch, mm; `None` below the flattest pitch of the table.
    #[must_use]
    pub fn underlay_lap(&self, pitch_deg: f64, supported: bool) -> Option<(f64, &UnderlayLap)> {
        let step = self.underlay.laps.iter().rev().find(|step| pitch_deg >= step.from_pitch - super::SAME_PITCH)?;
        Some((if supported { step.supported } else { step.open }, step))
    }

    /// Size of battens for a covering over rafters at a distance, mm; `None` beyond the table.
    #[must_use]
    pub fn batten(&self, kind: BattenKind, centres: f64) -> Option<&BattenSize> {
        self.battens
            .iter()
            .filter(|b| b.kind == kind && centres <= b.span + super::SAME)
            .min_by(|a, b| a.span.total_cmp(&b.span))
    }

    /// The furthest that rafters may stand apart for battens of a kind, mm.
    #[must_use]
    pub fn batten_reach(&self, kind: BattenKind) -> f64 {
        self.battens.iter().filter(|b| b.kind == kind).fold(0.0, |most, b| most.max(b.span))
    }

    /// Where battens of a gauge may be joined.
    #[must_use]
    pub fn joint_share(&self, gauge: f64) -> &Share {
        if gauge > self.joints.gauge.value { &self.joints.over } else { &self.joints.up_to }
    }

    /// The same in words.
    #[must_use]
    pub fn batten_joints(&self, gauge: f64) -> String {
        let share = self.joint_share(gauge);
        format!("at most {} in any {} joined over one rafter", share.most, share.among)
    }
}
