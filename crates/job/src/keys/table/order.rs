//! Keys of what is bought.

use crate::keys::Kind::{Count, Figure, Figures, Flag, Length, Lengths, Pitch, Size, Text, Word};
use crate::keys::Preset::{self, Number, Otherwise, Part, Required};
use crate::keys::{Key, key};
use crate::limits;
use crate::words::words;
use crate::{OrderAim, Per, StrengthClass};

pub(super) static KEYS: &[Key] = &[
    key("order.aim", Word(words::<OrderAim>), Preset::Word("cost"), "What the cutting plan makes least"),
    key("order.kerf", Length(limits::KERF), Number(3.0), "What the saw takes, square to the cut"),
    key("order.trim", Length(limits::TRIM), Number(0.0), "What is cut off each end of a length to square it"),
    key("order.keep", Length(limits::OFFCUT), Number(600.0), "Offcuts of this length and over go back into the yard"),
    key("order.treated", Flag, Preset::Flag(false), "Structural timber is bought treated"),
    key("order.lift", Figure(limits::HOIST, "kg"), Number(500.0), "What goes up in one lift of the hoist or forks"),
    key("stock.*.size", Size, Required("[47, 150]"), "Its section"),
    key(
        "stock.*.class",
        Word(words::<StrengthClass>),
        Otherwise("any timber of this section", "\"C24\""),
        "Its strength class",
    ),
    key(
        "stock.*.lengths",
        Lengths(limits::STOCK_LENGTH),
        Otherwise("those usual in the region", "[3600, 4200, 4800]"),
        "Lengths that can be had",
    ),
    key("stock.*.price", Figure(limits::PRICE, ""), Otherwise("not known", "3.2"), "Price of a metre"),
    key(
        "stock.*.prices",
        Figures(limits::PRICE, ""),
        Otherwise("by the metre", "[11.52, 13.44, 15.36]"),
        "Price of each length, in the order of lengths",
    ),
    key("stock.*.clean", Flag, Preset::Flag(false), "Long and clean timber, kept for hips and valleys"),
    key("stock.*.dated", Text, Otherwise("not said", "\"2026-11-02\""), "When its prices were asked"),
    key("yard.*.size", Size, Required("[47, 150]"), "Section of the offcut"),
    key("yard.*.length", Length(limits::STOCK_LENGTH), Required("2350"), "Its length"),
    key("yard.*.count", Count(limits::YARD), Number(1.0), "How many there are"),
    key("yard.*.class", Word(words::<StrengthClass>), Otherwise("not known", "\"C24\""), "Its strength class"),
    key("yard.*.clean", Flag, Preset::Flag(false), "Long and clean"),
    key("price.*.price", Figure(limits::PRICE, ""), Required("0.62"), "What it costs"),
    key("price.*.per", Word(words::<Per>), Required("\"each\""), "What that is the price of"),
    key("price.*.dated", Text, Otherwise("not said", "\"2026-11-02\""), "When it was asked"),
    key("covering.of", Text, Part("\"plain-tile\""), "Its name among the coverings of the region"),
    key(
        "covering.length",
        Length(limits::TILE),
        Otherwise("as the covering has it", "265"),
        "Length of a tile, slate or sheet",
    ),
    key("covering.width", Length(limits::TILE), Otherwise("as the covering has it", "165"), "Its width"),
    key(
        "covering.cover_width",
        Length(limits::TILE),
        Otherwise("as the covering has it", "165"),
        "Width that it covers",
    ),
    key("covering.head_lap", Length(limits::LAP), Otherwise("by the pitch", "65"), "Head lap"),
    key(
        "covering.most_gauge",
        Length(limits::TILE),
        Otherwise("by the lap", "100"),
        "Greatest gauge that its maker allows",
    ),
    key(
        "covering.least_pitch",
        Pitch(limits::PITCH),
        Otherwise("as the covering has it", "35"),
        "Least pitch that its maker allows",
    ),
    key("covering.weight", Figure(limits::WEIGHT, "kg"), Otherwise("as the covering has it", "1.15"), "Weight of one"),
    key("covering.batten", Size, Otherwise("by the rafters' centres", "[25, 38]"), "Section of the battens"),
    key("covering.boarded", Flag, Preset::Flag(false), "Boards lie under the underlay"),
    key(
        "covering.breakage",
        Figure(limits::PERCENT, "%"),
        Otherwise("by the roof", "5"),
        "Allowance for what breaks and for odd cuts",
    ),
];
