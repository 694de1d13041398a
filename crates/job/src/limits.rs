//! How great or small the values of a file may be, each with its reason.

/// A range of lengths or angles that a value may lie in, ends included.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limits {
    /// Least, mm or degrees.
    pub least: f64,
    /// Greatest, mm or degrees.
    pub most: f64,
    /// Why no less and no more.
    pub why: &'static str,
}

/// Largest file, bytes. A job of a thousand corners takes some 30 kB, so a
/// larger text is another kind of file, and reading it would only make a
/// phone wait.
pub const LARGEST_FILE: usize = 1 << 20;

/// Most corners of all loops together. Every corner is compared with every
/// other, and no roof that is cut by hand comes near.
pub const MOST_CORNERS: usize = 1000;

/// Longest title, date, revision or region, characters: more does not fit on
/// the head of a sheet.
pub const LONGEST_TEXT: usize = 120;

/// Where corners may lie, mm from the datum.
pub(crate) const PLACE: Limits = Limits {
    least: -1_000_000.0,
    most: 1_000_000.0,
    why: "A kilometre from the datum is a slip of the unit, and takes the accuracy from every cut",
};

/// Pitches.
pub(crate) const PITCH: Limits =
    Limits {
        least: 5.0, most: 80.0, why: "Below 5° a roof is flat and its seat cuts run out; above 80° it is a wall"
    };

/// How far corners may be moved to make plates true.
pub(crate) const TRUE_WITHIN: Limits = Limits {
    least: 0.0,
    most: crate::types::TRUE_AT_MOST,
    why: "0 leaves the plates as they were measured; a plate moved by more than 25 mm no longer bears on its wall",
};

/// Thickness of the wall under the plates.
pub(crate) const WALL: Limits = Limits {
    least: 50.0,
    most: 1500.0,
    why: "Thinner than 50 mm nothing carries a plate, and walls thicker than 1.5 m are a slip of the unit",
};

/// Packing under the rafters of a wall.
pub(crate) const PACKING: Limits = Limits {
    least: 0.0,
    most: 150.0,
    why: "0 packs nothing; rafters that stand on more than 150 mm of packing want a second plate",
};

/// Overhangs.
pub(crate) const OVERHANG: Limits = Limits {
    least: 0.0,
    most: 3000.0,
    why: "Tails stop at or outside the plate line, and past 3 m they need posts of their own",
};

/// Set-back of the first rafter of a gable.
pub(crate) const INSET: Limits = Limits {
    least: 0.0,
    most: 3000.0,
    why: "The first rafter stands on the plate, near the gable that its verge hangs on",
};

/// Depth of a fascia.
pub(crate) const FASCIA_DEPTH: Limits = Limits {
    least: 10.0,
    most: 1000.0,
    why: "A level soffit cut needs a plumb face above it, and no fascia is deeper than a metre",
};

/// Thickness or depth of a timber.
pub const SECTION: Limits = Limits {
    least: 5.0,
    most: 1000.0,
    why: "Thinner than 5 mm is not timber to build with, and more than a metre is a slip of the unit",
};

/// Centres of rafters. The thickness of the rafter sets a tighter least.
pub(crate) const CENTRES: Limits = Limits {
    least: 10.0,
    most: 2000.0,
    why: "Battens and boards do not span more than 2 m, and rafters need room between them",
};

/// Least centres of rafters, in thicknesses of the rafter: one timber and one
/// gap as wide, which still takes a hammer.
pub(crate) const LEAST_CENTRES_IN_THICKNESSES: f64 = 2.0;

/// Depth of a birdsmouth. The depth of the rafter sets a tighter most.
pub(crate) const BIRDSMOUTH: Limits = Limits {
    least: 1.0,
    most: 1000.0,
    why: "A shallower notch cannot be cut, and a deeper one cuts the rafter through",
};

/// Depth of the birdsmouth when a file says nothing, as a part of the depth
/// of the rafter: the common rule of the trade.
pub(crate) const BIRDSMOUTH_PART: f64 = 0.25;

/// Height of a wall's plate above the datum of the job.
pub(crate) const PLATE_LEVEL: Limits = Limits {
    least: -10_000.0,
    most: 10_000.0,
    why: "Plates of one roof lie within a few storeys of each other: 10 m is a slip of the unit",
};

/// Heights above a plate at which something starts or ends.
pub(crate) const HEIGHT: Limits = Limits {
    least: 10.0,
    most: 20_000.0,
    why: "Lower than 10 mm nothing is left of it, and no roof that is cut by hand is 20 m high",
};

/// How far sprockets reach up the rafter, in plan.
pub(crate) const REACH: Limits = Limits {
    least: 50.0,
    most: 3000.0,
    why: "Less than 50 mm cannot be nailed to the back of a rafter, and past 3 m it is a second slope",
};

/// Distances along a wall or up a slope.
pub(crate) const ALONG: Limits = Limits {
    least: 0.0,
    most: 100_000.0,
    why: "It is measured from the start of the wall or from the plate line, and 100 m is a slip of the unit",
};

/// Distances up a slope of the lines of purlins.
pub(crate) const PURLIN_UP: Limits = Limits {
    least: 100.0,
    most: 30_000.0,
    why: "Nearer than 100 mm a purlin lies on the plate, and no rafter cut by hand is 30 m long",
};

/// Sides of openings and dormers.
pub(crate) const OPENING: Limits = Limits {
    least: 50.0,
    most: 20_000.0,
    why: "Nothing passes through a hole of less than 50 mm, and 20 m is a slip of the unit",
};

/// Thickness of the masonry round a flue.
pub(crate) const FLUE_WALL: Limits = Limits {
    least: 20.0,
    most: 1000.0,
    why: "It says how near to the flue timber may come, and no stack is thinner than 20 mm or thicker than a metre",
};

/// Centres of struts and hangers.
pub(crate) const SUPPORT_CENTRES: Limits = Limits {
    least: 100.0,
    most: 6000.0,
    why: "Closer than 100 mm there is no room between them, and past 6 m they hold nothing up",
};

/// Centres of the rungs of a gable ladder.
pub(crate) const RUNG_CENTRES: Limits = Limits {
    least: 100.0,
    most: 2000.0,
    why: "Closer than 100 mm there is no room between them, and past 2 m they carry no verge",
};

/// One collar to so many pairs of rafters.
pub(crate) const EVERY: Limits =
    Limits { least: 1.0, most: 10.0, why: "A collar to every tenth pair ties nothing together any more" };

/// Rows of noggins.
pub(crate) const ROWS: Limits =
    Limits { least: 1.0, most: 6.0, why: "No row is no noggins, and more than six rows stiffen nothing further" };

/// Longest timber to be had.
pub(crate) const STOCK: Limits = Limits {
    least: 1000.0,
    most: 30_000.0,
    why: "Shorter stock would be more joints than timber, and nobody carries longer than 30 m",
};

/// Most things of one kind that are named in a file: openings, dormers or
/// bearings. Each is compared with every other, and no roof has so many.
pub const MOST_NAMED: usize = 500;

/// Most timbers that are ticked. They are only looked up, and ten thousand is
/// ten times the largest roof that is framed as one.
pub const MOST_TICKED: usize = 10_000;

/// Measured lengths of plate lines and between corners. The plan sets a
/// tighter least for walls.
pub(crate) const SIDE: Limits = Limits {
    least: 1.0,
    most: 1_000_000.0,
    why: "A wall or diagonal has some length, and a kilometre is a slip of the unit",
};

/// Measured inside angles.
pub(crate) const TURN: Limits =
    Limits { least: 1.0, most: 359.0, why: "At 0° and at 360° the walls would lie in one another" };

/// What a tape may be out by.
pub(crate) const TAPE: Limits = Limits {
    least: 0.1,
    most: 100.0,
    why: "No tape reads to less than a tenth of a millimetre, and 100 mm out is no measurement",
};

/// What a measured angle may be out by.
pub(crate) const BEVEL: Limits =
    Limits { least: 0.01, most: 5.0, why: "Less takes a theodolite, and 5° out is a guess by eye" };

/// Levels of plates over a level line.
pub(crate) const LEVEL: Limits = Limits {
    least: -3000.0,
    most: 3000.0,
    why: "A staff is some metres long: more is a slip of the unit, or plates of different storeys (`plate` of a wall)",
};

/// Loads on an area.
pub(crate) const LOAD: Limits = Limits {
    least: 0.0,
    most: 5.0,
    why: "No layer of a pitched roof or its ceiling weighs 5 kN/m², which is half a tonne",
};

/// Zones of snow maps.
pub(crate) const SNOW_ZONE: Limits = Limits { least: 1.0, most: 5.0, why: "The map has zones 1 to 5" };

/// Heights above the sea, m.
pub(crate) const ALTITUDE: Limits =
    Limits { least: -10.0, most: 1500.0, why: "It is the height of the ground above the sea in metres" };

/// Peak wind pressures, kN/m².
pub(crate) const WIND: Limits =
    Limits { least: 0.1, most: 5.0, why: "Peak pressures on houses lie between a half and two kN/m²" };

/// Service classes.
pub(crate) const SERVICE: Limits = Limits { least: 1.0, most: 3.0, why: "There are three service classes" };

/// What a saw takes.
pub(crate) const KERF: Limits =
    Limits { least: 0.5, most: 10.0, why: "No saw for timber takes less than half a millimetre or more than ten" };

/// How far pieces of one pattern may differ.
pub(crate) const ALIKE: Limits = Limits {
    least: 0.0,
    most: 5.0,
    why: "0 makes a pattern of every difference that a rule shows; cuts out by more than 5 mm do not bear",
};

/// What is cut off to square an end.
pub(crate) const TRIM: Limits = Limits { least: 0.0, most: 300.0, why: "More than 300 mm off each end is no squaring" };

/// Lengths of offcuts that are kept.
pub(crate) const OFFCUT: Limits =
    Limits { least: 50.0, most: 10_000.0, why: "Shorter than 50 mm is firewood, and 10 m is a slip of the unit" };

/// Lengths of stock and offcuts.
pub const STOCK_LENGTH: Limits =
    Limits { least: 100.0, most: 20_000.0, why: "No stock is shorter than 100 mm, and no lorry brings 20 m" };

/// Offcuts of one length.
pub(crate) const YARD: Limits = Limits { least: 1.0, most: 1000.0, why: "It is how many lie there" };

/// Prices, in the currency of the region.
pub const PRICE: Limits = Limits {
    least: 0.0001,
    most: 100_000.0,
    why: "A price is more than nothing; what costs nothing because you have it belongs in [yard]",
};

/// What goes up in one lift, kg.
pub(crate) const HOIST: Limits =
    Limits { least: 10.0, most: 20_000.0, why: "It is what the hoist or the forks take, in kilograms" };

/// Sides of tiles, slates and sheets.
pub(crate) const TILE: Limits =
    Limits { least: 20.0, most: 15_000.0, why: "It is a tile, a slate or a sheet that people lay" };

/// Laps of coverings.
pub(crate) const LAP: Limits =
    Limits { least: 0.0, most: 1000.0, why: "More than a metre of lap is a slip of the unit" };

/// Weight of one tile, slate or sheet, kg.
pub(crate) const WEIGHT: Limits =
    Limits { least: 0.05, most: 200.0, why: "It is one tile, slate or sheet that people lay" };

/// Shares in percent.
pub(crate) const PERCENT: Limits = Limits { least: 0.0, most: 50.0, why: "It is an allowance, in percent" };

/// Longest statement that people on site write, characters: some lines in a
/// table of a record.
pub const LONGEST_STATEMENT: usize = 600;

/// Most days off: more than a year of them is no list of one roof's.
pub(crate) const MOST_HOLIDAYS: usize = 400;

/// People of one trade at work together.
pub(crate) const CREW: Limits =
    Limits { least: 1.0, most: 50.0, why: "Somebody does the work, and fifty do not fit on one roof" };

/// Hours of work in a day.
pub(crate) const DAY_HOURS: Limits =
    Limits { least: 1.0, most: 16.0, why: "It is the time at work in one day, without breaks" };

/// Hours for one piece of work.
pub(crate) const WORK_HOURS: Limits =
    Limits { least: 0.0, most: 400.0, why: "It is for one piece, metre or square metre, not for the whole job" };

/// Share of the time lost to weather, per cent.
pub(crate) const WEATHER_LOSS: Limits =
    Limits { least: 0.0, most: 90.0, why: "A month in which more is lost is no month to put up a roof" };

/// Days for a scaffold.
pub(crate) const SCAFFOLD_DAYS: Limits =
    Limits { least: 0.0, most: 200.0, why: "No scaffold of a roof that is cut by hand takes so many days" };

/// Load classes of platforms.
pub(crate) const LOAD_CLASS: Limits = Limits { least: 1.0, most: 6.0, why: "There are six load classes" };

/// Length of a bay.
pub(crate) const BAY: Limits = Limits {
    least: 500.0,
    most: 4000.0,
    why: "Boards do not span from standard to standard further than their transoms are made for",
};

/// Boards side by side.
pub(crate) const BOARDS: Limits =
    Limits { least: 2.0, most: 12.0, why: "One board is no platform, and a dozen are wider than scaffolds stand" };

/// Height of a lift.
pub(crate) const LIFT: Limits =
    Limits { least: 500.0, most: 3000.0, why: "People work from each lift, and standards are braced at each" };

/// Height of plates above the ground.
pub(crate) const PLATE_HEIGHT: Limits =
    Limits { least: 0.0, most: 50_000.0, why: "Plates lie above the ground, and no roof by hand stands 50 m up" };

/// Timbers of one stack.
pub(crate) const STACK: Limits =
    Limits { least: 1.0, most: 500.0, why: "It is one stack on a platform, not the whole roof on the lorry" };

/// Prices.
pub(crate) const MONEY: Limits =
    Limits { least: 0.0, most: 10_000_000.0, why: "It is a price in pounds or dollars, not in pence or cents" };

/// Weeks of hire.
pub(crate) const HIRE_WEEKS: Limits =
    Limits { least: 0.0, most: 520.0, why: "It is in weeks, and ten years is no hire of a scaffold" };
