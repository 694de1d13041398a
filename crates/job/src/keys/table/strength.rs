//! Keys of what the roof carries, and of the timber's strength.

use crate::keys::Kind::{Count, Figure, Flag, Word};
use crate::keys::Preset::{self, Number, Otherwise, Part};
use crate::keys::{Key, key};
use crate::limits;
use crate::words::words;
use crate::{Covering, Feet, RidgeAs, StrengthClass};

pub(super) static KEYS: &[Key] = &[
    key("loads.covering", Word(words::<Covering>), Part("\"plain-tile\""), "What the slopes are covered with"),
    key(
        "loads.covering_weight",
        Figure(limits::LOAD, "kN/m²"),
        Otherwise("by the covering", "0.68"),
        "What the covering weighs on the slope, as its maker declares it",
    ),
    key(
        "loads.under_covering",
        Figure(limits::LOAD, "kN/m²"),
        Number(0.035),
        "Battens and underlay, boards if there are any, on the slope",
    ),
    key(
        "loads.lining",
        Figure(limits::LOAD, "kN/m²"),
        Number(0.0),
        "Insulation and lining between and under the rafters, on the slope",
    ),
    key(
        "loads.ceiling",
        Figure(limits::LOAD, "kN/m²"),
        Number(0.25),
        "Plasterboard, insulation and what else hangs from or lies on the ceiling joists",
    ),
    key(
        "loads.loft",
        Figure(limits::LOAD, "kN/m²"),
        Number(0.25),
        "What is put in the loft; more than the usual 0.25 is storage",
    ),
    key("loads.snow_zone", Count(limits::SNOW_ZONE), Part("3"), "Zone on the snow map of the region"),
    key("loads.altitude", Figure(limits::ALTITUDE, "m"), Part("120"), "Height of the site above the sea"),
    key(
        "loads.snow_held",
        Flag,
        Preset::Flag(false),
        "Snow is kept from sliding off by guards, parapets or what stands below the eaves",
    ),
    key(
        "loads.wind",
        Figure(limits::WIND, "kN/m²"),
        Part("0.85"),
        "Peak wind pressure at the height of the ridge, from whoever worked it out for the site",
    ),
    key("loads.tank", Flag, Preset::Flag(false), "A water tank stands on the ceiling or in the roof"),
    key("loads.panels", Flag, Preset::Flag(false), "Panels or plant stand on the slopes"),
    key("strength.class", Word(words::<StrengthClass>), Preset::Word("C16"), "Strength class stamped on the timber"),
    key(
        "strength.graded",
        Flag,
        Preset::Flag(true),
        "Every structural timber is new and carries a grade stamp; reclaimed and green timber does not",
    ),
    key(
        "strength.service",
        Count(limits::SERVICE),
        Number(2.0),
        "Service class: 1 inside the insulation, 2 in a cold ventilated loft, 3 open to the weather",
    ),
    key(
        "strength.feet",
        Word(words::<Feet>),
        Preset::Word("free"),
        "Whether the walls can hold the feet of rafters against spreading; only an engineer can say that they do",
    ),
    key(
        "strength.ridge",
        Word(words::<RidgeAs>),
        Preset::Word("board"),
        "A board that pairs of rafters lean on, or a beam that carries them, held up at its ends",
    ),
];
