//! What the job says of its covering, put over the figures of the region.

use super::fault::CoverFault;
use super::figures::{BattenKind, Bond, Covering, Coverings, Hung, LapStep, Way};
use super::sums;

/// Most names that a fault offers.
const NAMES_OFFERED: usize = 3;

/// What the job says of its covering. What it does not say is taken from the region; lengths in mm, kg, degrees.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Chosen {
    /// Name of the covering, e.g. `plain-tile`.
    pub name: String,
    /// Length of a piece; of a sheet, the longest.
    pub length: Option<f64>,
    /// Width of a piece.
    pub width: Option<f64>,
    /// What of the width shows.
    pub cover_width: Option<f64>,
    /// Head lap; the least for the pitch when none is said.
    pub head_lap: Option<f64>,
    /// Least pitch that the maker allows.
    pub least_pitch: Option<f64>,
    /// The most gauge that the maker allows.
    pub most_gauge: Option<f64>,
    /// The least gauge that the maker allows.
    pub least_gauge: Option<f64>,
    /// Weight of one piece.
    pub weight: Option<f64>,
    /// Thickness and width of battens.
    pub batten: Option<[f64; 2]>,
    /// The underlay lies on boards.
    pub supported: bool,
    /// Share ordered for breakage.
    pub breakage: Option<f64>,
    /// How far the eaves course hangs past the fascia or the tails.
    pub eaves_overhang: Option<f64>,
    /// How far the covering hangs past the barge board or the last timber of the verge.
    pub verge_overhang: Option<f64>,
    /// What one ridge or hip piece covers.
    pub ridge_piece: Option<f64>,
    /// One bonnet a course on hips in place of hip pieces.
    pub bonnets: bool,
    /// One valley piece a course in place of a lining.
    pub valley_pieces: bool,
}

impl Chosen {
    /// A covering as the region has it.
    #[must_use]
    pub fn named(name: impl Into<String>) -> Self {
        Self { name: name.into(), ..Self::default() }
    }
}

/// A covering with every figure settled; lengths in mm, kg.
#[derive(Clone, Debug)]
pub(super) struct Product<'a> {
    pub name: &'a str,
    pub called: &'a str,
    pub way: Way,
    pub bond: Bond,
    pub hung: Hung,
    pub battens: Option<BattenKind>,
    pub length: f64,
    pub cover_width: f64,
    pub laps: &'a [LapStep],
    pub chosen_lap: Option<f64>,
    pub least_pitch: Option<f64>,
    pub most_gauge: Option<f64>,
    pub least_gauge: Option<f64>,
    pub weight: Option<f64>,
    pub weight_per_area: Option<f64>,
    pub short_length: Option<f64>,
    pub wide: Option<f64>,
    pub nails: f64,
    pub nail_every: u64,
    pub fixings_per_area: Option<f64>,
    pub rails: Option<f64>,
    pub ridge_piece: f64,
    pub ridge_piece_weight: f64,
    pub undercloak: bool,
    pub random: bool,
    pub holing_extra: f64,
}

/// Settles every figure of a covering.
pub(super) fn product<'a>(chosen: &'a Chosen, figures: &'a Coverings) -> Result<Product<'a>, CoverFault> {
    let Some((name, from)) = figures.coverings.get_key_value(&chosen.name) else {
        return Err(CoverFault::Unknown { name: chosen.name.clone(), near: nearest(&chosen.name, figures) });
    };
    let value =
        |given: Option<f64>, figure: &Option<super::figures::Figure>| given.or(figure.as_ref().map(|f| f.value));
    let length = positive("the length of a piece", chosen.length.unwrap_or(from.length.value))?;
    let width = positive("the width of a piece", chosen.width.unwrap_or(from.width.value))?;
    // A maker's width without its cover width keeps the side lap of the region.
    let cover = chosen
        .cover_width
        .unwrap_or_else(|| from.cover_width.as_ref().map_or(width, |c| c.value + width - from.width.value));
    let product = Product {
        name,
        called: &from.called,
        way: from.way,
        bond: from.bond,
        hung: from.hung,
        battens: from.battens,
        length,
        cover_width: positive("the cover width", cover)?,
        laps: &from.laps,
        chosen_lap: chosen.head_lap.map(|v| at_least_none("the head lap", v)).transpose()?,
        least_pitch: chosen.least_pitch.map(|v| at_least_none("the least pitch", v)).transpose()?,
        most_gauge: most_gauge(chosen, from, length)?,
        least_gauge: value(chosen.least_gauge, &from.least_gauge)
            .filter(|_| chosen.least_gauge.is_some() || chosen.length.is_none()),
        weight: value(chosen.weight, &from.weight).map(|v| positive("the weight of a piece", v)).transpose()?,
        weight_per_area: from.weight_per_area.as_ref().filter(|_| chosen.weight.is_none()).map(|f| f.value),
        short_length: from.short_length.as_ref().filter(|_| chosen.length.is_none()).map(|f| f.value),
        wide: from.wide.as_ref().map(|f| f.value),
        nails: from.nails.as_ref().map_or(0.0, |f| f.value),
        nail_every: sums::whole_up(from.nail_every.as_ref().map_or(1.0, |f| f.value)).max(1),
        fixings_per_area: from.fixings_per_area.as_ref().map(|f| f.value),
        rails: from.rails.as_ref().map(|f| f.value),
        ridge_piece: positive(
            "the length of a ridge piece",
            value(chosen.ridge_piece, &from.ridge_piece).unwrap_or(figures.common.ridge_piece.value),
        )?,
        ridge_piece_weight: value(None, &from.ridge_piece_weight).unwrap_or(figures.common.ridge_piece_weight.value),
        undercloak: from.undercloak,
        random: from.random,
        holing_extra: figures.common.holing_extra.value,
    };
    if let Some(batten) = chosen.batten {
        positive("the thickness of a batten", batten[0])?;
        positive("the width of a batten", batten[1])?;
    }
    for (what, given) in [
        ("the share for breakage", chosen.breakage),
        ("the overhang at eaves", chosen.eaves_overhang),
        ("the overhang at verges", chosen.verge_overhang),
        ("the least gauge", chosen.least_gauge),
    ] {
        given.map(|v| at_least_none(what, v)).transpose()?;
    }
    Ok(product)
}

fn most_gauge(chosen: &Chosen, from: &Covering, length: f64) -> Result<Option<f64>, CoverFault> {
    match chosen.most_gauge {
        Some(given) => positive("the most gauge", given).map(Some),
        // The figure of the region goes with the length of the region.
        None if chosen.length.is_none_or(|l| l == length && l == from.length.value) => {
            Ok(from.most_gauge.as_ref().map(|f| f.value))
        }
        None => Ok(None),
    }
}

impl Product<'_> {
    /// Head lap for a slope, or why it cannot be covered.
    pub fn lap_at(&self, pitch_deg: f64, place: &str) -> Result<f64, CoverFault> {
        let needed = self.laps.iter().rev().find(|step| pitch_deg >= step.from_pitch - super::SAME_PITCH);
        let lap = match self.chosen_lap.or(needed.or(self.laps.first()).map(|step| step.lap)) {
            Some(lap) if lap < self.length => lap,
            Some(lap) => return Err(CoverFault::LapImpossible { lap_mm: lap, length_mm: self.length }),
            None => return Err(CoverFault::NotPositive { what: "the head lap", value: 0.0 }),
        };
        // A lap is good from the flattest pitch whose least it reaches.
        let reached = self.laps.iter().filter(|step| step.lap <= lap + super::SAME);
        let from_lap = reached.map(|step| step.from_pitch).min_by(f64::total_cmp);
        let Some(least) = self.least_pitch.or(from_lap) else {
            let least_mm = self.laps.iter().map(|step| step.lap).fold(f64::INFINITY, f64::min);
            return Err(CoverFault::LapShort { called: self.called.to_owned(), lap_mm: lap, least_mm });
        };
        if pitch_deg >= least - super::SAME_PITCH {
            return Ok(lap);
        }
        let remedy = match (needed, self.least_pitch) {
            (Some(step), None) => format!("a head lap of {:.0} mm allows {:.1} degrees", step.lap, step.from_pitch),
            (None, None) => {
                "make the slope steeper, choose a covering for flatter slopes, or give its maker's least pitch"
                    .to_owned()
            }
            (_, Some(_)) => "make the slope steeper, or choose a covering for flatter slopes".to_owned(),
        };
        Err(CoverFault::PitchBelowLeast {
            called: self.called.to_owned(),
            place: place.to_owned(),
            pitch_deg,
            least_deg: least,
            lap_mm: lap,
            remedy,
        })
    }

    /// The most gauge with a lap, mm.
    pub fn most_gauge_with(&self, lap: f64) -> f64 {
        let by_lap = sums::gauge(self.way, self.length, lap);
        self.most_gauge.map_or(by_lap, |most| most.min(by_lap))
    }

    /// Length of the last course, and of the one under the eaves course, mm.
    pub fn short(&self, lap: f64) -> f64 {
        match self.way {
            Way::Single | Way::Sheet => self.length,
            Way::Double | Way::Triple => self.short_length.unwrap_or_else(|| self.most_gauge_with(lap) + lap),
        }
    }

    /// Where a piece hangs above its tail, mm.
    pub fn hangs_at(&self, piece: f64, gauge: f64, lap: f64) -> f64 {
        match self.hung {
            Hung::Head => piece,
            Hung::Centre => sums::holing_from_tail(gauge, lap, self.holing_extra).min(piece),
        }
    }
}

fn positive(what: &'static str, value: f64) -> Result<f64, CoverFault> {
    if value.is_finite() && value > 0.0 { Ok(value) } else { Err(CoverFault::NotPositive { what, value }) }
}

fn at_least_none(what: &'static str, value: f64) -> Result<f64, CoverFault> {
    if value.is_finite() && value >= 0.0 { Ok(value) } else { Err(CoverFault::Negative { what, value }) }
}

/// The names that share most pairs of letters with one.
fn nearest(name: &str, figures: &Coverings) -> Vec<String> {
    let pairs = |word: &str| -> Vec<[char; 2]> {
        let letters: Vec<char> = word.chars().collect();
        letters.windows(2).map(|w| [w[0], w[1]]).collect()
    };
    let asked = pairs(name);
    let mut names: Vec<(usize, &String)> = figures
        .coverings
        .keys()
        .map(|known| {
            let of = pairs(known);
            let shared = asked.iter().filter(|pair| of.contains(pair)).count();
            (2 * shared * 100 / (asked.len() + of.len()).max(1), known)
        })
        .collect();
    names.sort_by(|a, b| b.0.cmp(&a.0).then(a.1.cmp(b.1)));
    names.into_iter().take(NAMES_OFFERED).map(|(_, known)| known.clone()).collect()
}
