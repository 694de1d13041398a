//! The job file: one TOML text per job, meant to be read and edited by a
//! person, and the checked [`Job`] that the rest of Seatcut works from.
//!
//! ```
//! let text = r#"
//! format = 1
//! title = "Boathouse workshop"
//!
//! [plan]
//! corners = [[0, 0], [8400, 0], [8400, "17' 1\""], [0, "17' 1\""]]
//!
//! [roof]
//! pitch = "9 in 12"
//!
//! [roof.walls]
//! B = { gable = true }
//! "#;
//! let job = job::read(text)?;
//! assert!(job.walls[1].gable);
//! assert_eq!(job.timber.rafter.birdsmouth, 37.5); // a quarter of 150 mm
//! # Ok::<(), job::Faults>(())
//! ```
//!
//! # What is here
//!
//! - [`read`] checks a text and gives a [`Job`], or **every** [`Fault`] at
//!   once, each with its place, what is wrong, why it matters and what to do.
//! - [`parse_length`], [`parse_pitch`] and [`format_length`] know the units.
//! - [`defaults_toml`] is a commented example of every key, and [`schema`] a
//!   JSON Schema for editors.
//! - [`edit`] changes keys and keeps comments and layout.
//! - [`listing`] lists the keys with what a file says for each.
//! - [`shapes`] makes new jobs from a shape and a few sizes.
//!
//! All of it is pure: text in, values out. One table of keys stands behind
//! reading, suggestions, example, schema and editing.
//!
//! # Words
//!
//! A **plate line** is the outer top arris of a wall plate, and the plan is
//! the polygon of plate lines: the outer loop anticlockwise, **courtyards**
//! clockwise. **Walls** go by letter: A runs from the first corner to the
//! second, then B, C … Z, AA; courtyards go on lettering after the outer loop.
//!
//! Lengths are numbers of mm, or texts such as `"8.4 m"` or `"27' 6 1/2\""`.
//! Pitches are degrees, or texts such as `"40°"`, `"6:12"` or `"6 in 12"`.
//!
//! # Codes of faults
//!
//! | code | rule |
//! | --- | --- |
//! | `file-empty` | there is something in the file |
//! | `file-too-large` | at most [`LARGEST_FILE`] bytes |
//! | `not-text` | UTF-8 text without zero bytes |
//! | `syntax` | TOML |
//! | `unknown-key` | every key is known |
//! | `missing-key` | `format`, `title`, `plan.corners` (or `plan.sides`) and `roof.pitch` are there, and what a named thing needs |
//! | `wrong-type` | values are of the kind that the key wants |
//! | `unknown-word` | words are of those that the key knows |
//! | `unknown-format` | `format` is [`FORMAT`] |
//! | `text-unfit` | texts fit one line of a sheet |
//! | `bad-region` | the region is the name of a folder |
//! | `bad-length` | lengths can be read |
//! | `bad-pitch` | pitches can be read |
//! | `bad-day` | days exist in the calendar |
//! | `out-of-range` | values lie in their range |
//! | `bad-corner` | corners are two lengths |
//! | `too-many-corners` | at most [`MOST_CORNERS`] corners |
//! | `plan-too-few-corners` | three corners or more to a loop |
//! | `plan-not-a-place` | corners lie within a kilometre of the datum |
//! | `plan-repeated-corner` | every corner is written once |
//! | `plan-walls-cross` | walls meet only at the corner they share |
//! | `plan-wrong-way-round` | outer plates anticlockwise, courtyards clockwise |
//! | `plan-wall-too-short` | walls are long enough to frame |
//! | `plan-courtyard-outside` | courtyards lie inside, and apart |
//! | `survey-and-corners` | corners, or what was measured, not both |
//! | `survey-without-sides` | what is measured goes with `plan.sides` |
//! | `unknown-corner` | letters are those of corners of the plan |
//! | `survey-size` | a survey has three sides or more, and not too many |
//! | `survey-cannot-close` | measurements are those of some plan |
//! | `survey-loose` | measurements fix the plan |
//! | `survey-weak` | measurements fix the plan well enough to cut timber by |
//! | `survey-two-plans` | no second plan fits the measurements |
//! | `survey-walls-cross` | the walls of the plan do not cross |
//! | `plan-rule` | any other rule that the checker of plans knows |
//! | `wall-shorter-than-plate` | walls are as long as plates are wide |
//! | `unknown-wall` | letters are those of walls of the plan |
//! | `bad-name` | names of the user's own are plain words |
//! | `too-many-named` | at most [`MOST_NAMED`] names in a group, [`MOST_TICKED`] in `done` |
//! | `not-rising` | lengths of a list rise |
//! | `part-unfinished` | what needs several keys has them all |
//! | `part-needs-another` | what is fitted to a part comes with that part |
//! | `struts-without-bearing` | struts have a line to stand on |
//! | `gable-with-pitch` | a gable has no pitch |
//! | `gable-with-overhang` | a gable has no eaves |
//! | `wall-of-two-forms` | a wall is a gable, a half hip, under a gablet, of two pitches, or plain |
//! | `upper-same-pitch` | a second pitch is another pitch |
//! | `sprocket-too-steep` | sprockets are flatter than every slope |
//! | `overhang-with-level-fascia` | own overhangs need `fascia = "fixed"` |
//! | `all-gables` | a slope rises from at least one wall |
//! | `bed-off-wall` | plates bear on the wall under them |
//! | `size-turned-round` | thickness before depth |
//! | `centres-too-close` | centres are two thicknesses or more |
//! | `birdsmouth-too-deep` | the birdsmouth leaves some of the rafter |
//! | `no-slope-there` | openings and dormers are not on gables |
//! | `up-said-twice` | `up` or `up_plan`, not both |
//! | `up-along-the-slope` | chimneys and hatches are measured level |
//! | `flue-wall-without-flue` | only a chimney has the wall of a flue |
//! | `past-the-wall` | openings and dormers end before their wall does |
//! | `openings-overlap` | openings of one wall lie apart |
//! | `dormers-overlap` | dormers of one wall stand apart |
//! | `dormer-too-steep` | a lean-to dormer is flatter than its slope |
//! | `dormer-under-slope` | a dormer's plates stand clear of its slope |
//! | `prices-and-lengths` | there are as many prices as lengths |
//! | `priced-twice` | timber goes by the metre or by the length |
//! | `bearing-without-length` | a bearing has two ends |
//!
//! # What is not checked
//!
//! Whether a roof can be made over the plan, whether the timber is strong
//! enough, and whether the region is one of those that come with Seatcut.

pub mod edit;
mod example;
mod fault;
mod keys;
mod length;
mod letters;
mod limits;
pub mod listing;
mod nearest;
mod pitch;
mod read;
mod schema;
pub mod shapes;
mod types;
mod words;
pub mod written;

pub use example::defaults_toml;
pub use fault::{Fault, Faults};
pub use keys::FORMAT;
pub use length::{LengthError, format_length, format_length_bare, parse_length};
pub use letters::{wall_index, wall_letter};
pub use limits::{
    LARGEST_FILE, LONGEST_STATEMENT, LONGEST_TEXT, Limits, MOST_CORNERS, MOST_NAMED, MOST_TICKED, PRICE, SECTION,
    STOCK_LENGTH,
};
pub use nearest::nearest;
pub use pitch::{PitchError, parse_pitch};
pub use read::{PlanChecker, read, read_with};
pub use schema::schema;
pub use types::{
    AccessAsked, AccessKind, BearingLine, Bench, Carried, CollarTimber, Covering, CoveringChoice, Day, Distance,
    Dormer, DormerKind, Eaves, Fascia, Feet, Ground, HipEdge, HipHead, HipLine, HipTimber, Job, JointRules,
    LEAST_BEARING, LengthUnit, NogginTimber, Opening, OpeningKind, OrderAim, Ordering, PACKING, Parts, Per, PriceOf,
    ProgrammeAsked, PurlinSet, PurlinTimber, RafterTimber, RidgeAs, RidgeRun, RidgeTimber, RidgeTop, Section,
    SettingOut, SpacedTimber, SpliceKind, Spread, Sprocket, StockTimber, StrengthClass, Strong, Survey, TRUE_AT_MOST,
    TRUE_WITHIN, TailCut, TickState, Ticked, Timber, UpperSlope, ValleyAs, Verge, WALL, Wall, Wood, WorkItem,
    YardTimber, places,
};
