//! What each step is called, why it comes now, and what may hurt.

use super::order::rank::Turn;
use super::order::schedule::Draft;

/// Title, reason and hazard of a step. `first`: nothing of this part of the roof stands yet; `purlin`: what is stood
/// is no ridge but the purlin at a break of pitch; `wall`: the board lies along a wall.
pub fn of(draft: &Draft, first: bool, purlin: bool, wall: bool) -> [&'static str; 3] {
    match draft.rank.turn {
        Turn::Spine if wall => [
            "Fix the board to the wall, level, at its height",
            "the heads of the rafters are nailed to it",
            "overhead lift",
        ],
        Turn::Spine if purlin && first => [
            match draft.braces.len() {
                0 => "Prop the purlin at the break of pitch, fix the first rafters, hold them till the next stand",
                1 => "Prop the purlin at the break of pitch, fix the first rafters, brace before letting go",
                _ => "Prop the purlin at the break of pitch, fix the first rafters, brace both ways before letting go",
            },
            "both slopes meet on it",
            "collapse before it is braced; overhead lift",
        ],
        Turn::Spine if purlin => [
            if draft.braces.is_empty() {
                "Prop the next purlin of the break, fix its rafter"
            } else {
                "Prop the next purlin of the break, fix its rafter, brace it"
            },
            "it joins what stands already",
            "overhead lift; let nothing go before it is fixed",
        ],
        Turn::Plates => [
            "Bed the plates, half-lap them, strap them down",
            "everything stands on them",
            "edges of the wall; long plates carried at height",
        ],
        Turn::Ties => [
            "Fix angle ties and dragon ties",
            "they keep the corners from spreading under the hips",
            "edges of the wall",
        ],
        Turn::Joists => [
            "Place the ceiling joists on the plates and board out a deck",
            "they tie the walls and give a floor to work from",
            "stepping between joists",
        ],
        Turn::HatchTrimmers => [
            "Trim the openings of the ceiling",
            "the cut joists hang on the trimmers",
            "the open hole: board it over, or rail it",
        ],
        Turn::StrutSoles => [
            "Lay the sole plates of the struts over the bearing walls",
            "the struts stand on them",
            "stepping between joists",
        ],
        Turn::DormerFrame => [
            "Stand the front and cheeks of the dormer, plate them and brace them",
            "the dormer's roof stands on them",
            "working over the open main roof",
        ],
        Turn::Spine if first => [
            match draft.braces.len() {
                0 => "Prop the ridge, fix the first pairs, hold them till the next stand",
                1 => "Prop the ridge, fix the first pairs, brace before letting go",
                _ => "Prop the ridge, fix the first pairs, brace both ways before letting go",
            },
            "the first pairs and braces hold all that follows",
            "collapse before it is braced; overhead lift",
        ],
        Turn::Spine => [
            if draft.braces.is_empty() {
                "Prop the next length, fix its pair"
            } else {
                "Prop the next length, fix its pair, brace it"
            },
            "it joins what stands already",
            "overhead lift; let nothing go before it is fixed",
        ],
        Turn::Crown if draft.stood => ["Stand the crown rafter on a prop", "the hips close on it", "overhead lift"],
        Turn::Crown => {
            ["Fix the crown rafters", "they hold the ridge along its length", "reaching over the end of the ridge"]
        }
        Turn::Hips if draft.stood => {
            ["Stand the hip on a prop and brace it", "nothing holds its head yet", "heavy overhead lift"]
        }
        Turn::Hips => [
            "Fix the hips in opposite pairs, to a string",
            "one against the other they do not push the ridge",
            "heavy lift over a corner",
        ],
        Turn::Valleys if draft.stood => {
            ["Stand the valley on a prop and brace it", "nothing holds its head yet", "heavy overhead lift"]
        }
        Turn::Valleys => {
            ["Fix valley rafters and lay boards", "the valley jacks stand on them", "working over the open main roof"]
        }
        Turn::Purlins if draft.stood => ["Prop the purlin and brace it", "the struts come under it next", "heavy lift"],
        Turn::Purlins => ["Fix the purlins under the rafters", "they keep the rafters straight", "heavy lift"],
        Turn::Struts => [
            "Fit the struts tight under the purlins",
            "they take the purlins to the walls below",
            "heavy lift at the foot of the slope",
        ],
        Turn::Commons => [
            "Fill in the rafters in opposing pairs, each foot nailed to plate and joist",
            "so that the ridge is not pushed, and no foot can spread",
            "reaching between open rafters",
        ],
        Turn::Jacks => [
            "Fix the jacks in opposing pairs, from the middle",
            "so that hip and valley stay straight",
            "reaching out over the corner",
        ],
        Turn::Trimmers => [
            "Fix the trimmers of the openings",
            "while everything is braced, before anything hangs on them",
            "the open hole",
        ],
        Turn::CutRafters => [
            "Fix the rafters above and below the openings",
            "they hang on the trimmers",
            "the open hole: board it over",
        ],
        Turn::Collars => ["Fix the collars", "they stop the pairs from spreading", "overhead work"],
        Turn::Binders => ["Fix the binders over the joists", "they keep the joists in line", "stepping between joists"],
        Turn::Hangers => ["Fix the hangers", "they carry the binders", "stepping between joists"],
        Turn::Noggins => [
            "Fix the noggins",
            "they keep the rafters upright, and straps are fixed to them",
            "reaching between open rafters",
        ],
        Turn::Ladder => {
            ["Fix the rungs of the gable ladders over the wall", "they carry the verge", "edge of the gable"]
        }
        Turn::Sprockets => ["Fix the sprockets to a line", "they carry the eaves", "edge of the eaves"],
        Turn::Fillets => ["Fix the tilting fillets", "they lift the first course", "edge of the eaves"],
        Turn::Fascia => {
            ["Fix the fascia to a line", "it squares up the tails", "edge of the eaves; long boards in the wind"]
        }
        Turn::Soffit => ["Fix the soffit", "the fascia holds its edge", "edge of the eaves, overhead work"],
        Turn::Barge => {
            ["Fix the barge boards", "last, when the verge stands still", "edge of the gable; long boards in the wind"]
        }
    }
}
