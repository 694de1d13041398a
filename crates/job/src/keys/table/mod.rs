//! The rows of the table, a file for each part of the job file.

mod bench;
mod done;
mod head;
mod named;
mod order;
mod parts;
mod roof;
mod site;
mod strength;
mod survey;
mod timber;

use super::Key;

/// Every key, in the order of a well-kept file.
pub(super) static TABLES: &[&[Key]] = &[
    head::KEYS,
    survey::KEYS,
    roof::KEYS,
    timber::KEYS,
    parts::KEYS,
    named::KEYS,
    bench::KEYS,
    strength::KEYS,
    order::KEYS,
    site::KEYS,
    done::KEYS,
];

/// What a group of keys is about.
pub(crate) static GROUPS: &[(&str, &str)] = &[
    ("plan", "The wall plates as built"),
    ("plan.diagonals", "Measured distances between corners, by the letters of the walls that start there"),
    ("plan.turns", "Measured inside angles, by the letter of the wall that starts at the corner"),
    ("plan.levels", "Levels of the plate, by the letter of the wall that starts at the corner"),
    ("roof", "The roof"),
    ("roof.eaves", "The eaves"),
    (
        "roof.eaves.sprocket",
        "Sprockets: tapered pieces on the backs of the rafters that flatten the slope at the eaves",
    ),
    ("roof.verge", "The verges of gables"),
    (
        "roof.upper",
        "A second pitch higher up, for a mansard: of every wall that slopes from its plate to the ridge and has none of its own",
    ),
    ("roof.walls", "Walls that differ, by letter: A runs from the first corner to the second, then B, C … Z, AA"),
    ("roof.walls.*.upper", "A second pitch of this wall higher up"),
    ("timber", "The timber, each size as [thickness, depth]"),
    ("timber.rafter", "Rafters of every kind"),
    ("timber.hip", "Hips"),
    ("timber.valley", "Valleys"),
    ("timber.ridge", "Ridge boards"),
    ("timber.plate", "Wall plates, [height, width on the wall]"),
    ("timber.joint", "How timbers longer than the stock are made"),
    ("timber.purlin", "Purlins under the rafters. This and every part below is fitted when its size is written"),
    ("timber.strut", "Struts from the lines of [bearings] up to the purlins"),
    ("timber.collar", "Collars across pairs of rafters"),
    ("timber.ceiling_joist", "Ceiling joists, lapped to the feet of the rafters"),
    ("timber.binder", "Binders across the ceiling joists"),
    ("timber.hanger", "Hangers from the purlins or rafters down to the binders"),
    ("timber.angle_tie", "Angle ties across hipped corners"),
    ("timber.dragon_tie", "Dragon ties from the corners of the plates to the angle ties"),
    ("timber.ladder", "Rungs of the gable ladders that carry the verges"),
    ("timber.noggin", "Noggins between the rafters"),
    ("timber.fascia", "Fascia boards"),
    ("timber.soffit", "Soffit boards"),
    ("timber.fillet", "Tilting fillets, [height at the fascia, width up the slope]"),
    ("timber.barge", "Barge boards at the verges"),
    ("timber.lay_board", "Boards laid on the main slope under the valleys of dormers"),
    ("openings", "Holes in slopes and ceilings, each under a name of your own"),
    ("dormers", "Dormers, each under a name of your own"),
    ("bearings", "Walls and beams inside the plan that carry load down, each under a name of your own"),
    ("bench", "How timber is set out and cut on the bench"),
    ("loads", "What the roof carries. Its strength is checked when this is written"),
    ("strength", "How strong the timber is, and what holds it"),
    ("order", "How timber is ordered and cut"),
    ("stock", "Timber that can be bought, each section under a name of your own"),
    ("yard", "Offcuts that lie in the yard, each under a name of your own"),
    ("price", "Prices of what is bought besides timber, by the words of the order"),
    ("covering", "What covers the slopes, for ordering. Figures left out are those of the region"),
    ("programme", "When the roof goes up, and by how many"),
    (
        "programme.hours",
        "Hours of one person for each piece of work; what is not here is an estimate, and is shown as one",
    ),
    ("access", "What the roof is put up from, and what is known of the site"),
    ("record", "What people on site say in place of statements of the records, by the names of these"),
    ("done", "Timbers that are cut or fixed, by their marks; written by whoever ticks them"),
];
