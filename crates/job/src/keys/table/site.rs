//! Keys of putting the roof up: the programme, the access and what is written on site.

use crate::keys::Kind::{Count, Date, Dates, Figure, Flag, Length, Months, Statement, Word};
use crate::keys::Preset::{self, Empty, Number, Otherwise, Required};
use crate::keys::{Key, key};
use crate::limits;
use crate::words::words;
use crate::{AccessKind, Ground};

/// What holds for the hours of work that a file does not give.
const ESTIMATE: &str = "by the region, an estimate";

const fn hours(path: &'static str, example: &'static str, meaning: &'static str) -> Key {
    key(path, Figure(limits::WORK_HOURS, "h"), Otherwise(ESTIMATE, example), meaning)
}

pub(super) static KEYS: &[Key] = &[
    key("programme.start", Date, Otherwise("none, and days are numbered", "2027-03-01"), "The first day on site"),
    key("programme.crew", Count(limits::CREW), Number(2.0), "Carpenters at work together"),
    key("programme.roofers", Count(limits::CREW), Number(2.0), "Roofers at work together"),
    key("programme.hours_a_day", Figure(limits::DAY_HOURS, "h"), Number(8.0), "Hours of work in a day"),
    key("programme.saturdays", Flag, Preset::Flag(false), "Saturdays are worked"),
    key("programme.holidays", Dates, Empty, "Days on which nobody works, besides weekends"),
    key(
        "programme.weather_loss",
        Months(limits::WEATHER_LOSS, "%"),
        Otherwise(ESTIMATE, "[30, 25, 20, 15, 10, 10, 10, 10, 15, 20, 25, 30]"),
        "Share of the working time that is lost to weather, of each month from January, or one for all",
    ),
    key(
        "programme.scaffold_up",
        Figure(limits::SCAFFOLD_DAYS, "days"),
        Otherwise("by its size, an estimate", "2"),
        "Working days in which the scaffold goes up",
    ),
    key(
        "programme.scaffold_down",
        Figure(limits::SCAFFOLD_DAYS, "days"),
        Otherwise("by its size, an estimate", "1"),
        "Working days in which the scaffold comes down",
    ),
    hours("programme.hours.plate_m", "0.16", "Wall plates bedded and halved, for each metre"),
    hours("programme.hours.strap_each", "0.13", "Each strap"),
    hours("programme.hours.rafter_each", "0.32", "Each common or crown rafter, cut and pitched"),
    hours("programme.hours.jack_each", "0.4", "Each jack or cripple, cut and pitched"),
    hours("programme.hours.hip_each", "2", "Each hip or valley, set out, cut and pitched"),
    hours("programme.hours.ridge_m", "0.2", "Ridge boards, for each metre"),
    hours("programme.hours.purlin_m", "0.35", "Purlins, for each metre"),
    hours("programme.hours.strut_each", "0.3", "Each strut or hanger"),
    hours("programme.hours.collar_each", "0.15", "Each collar"),
    hours("programme.hours.ceiling_joist_each", "0.2", "Each ceiling joist"),
    hours("programme.hours.binder_m", "0.12", "Binders, for each metre"),
    hours("programme.hours.tie_each", "0.6", "Each angle or dragon tie"),
    hours("programme.hours.opening_each", "3", "Each opening, trimmed"),
    hours("programme.hours.dormer_each", "8", "Each dormer, besides its timbers"),
    hours("programme.hours.noggin_each", "0.1", "Each noggin, rung of a gable ladder or sprocket"),
    hours("programme.hours.board_m", "0.14", "Fascia, soffit, barge and lay boards and fillets, for each metre"),
    hours("programme.hours.underlay_battens_m2", "0.14", "Underlay and battens, for each m²"),
    hours("programme.hours.covering_m2", "0.7", "The covering, for each m²"),
    hours("programme.hours.edge_m", "0.3", "Lead, cappings and gutters, for each metre of edge"),
    key(
        "access.kind",
        Word(words::<AccessKind>),
        Otherwise("what the roof suggests", "\"tower\""),
        "What the roof is put up from",
    ),
    key(
        "access.class",
        Count(limits::LOAD_CLASS),
        Number(3.0),
        "Load class of the working platform: 2 for light work, 3 for carpentry, 4 for stacked tiles",
    ),
    key("access.bay", Length(limits::BAY), Number(2000.0), "Length of a bay, from standard to standard"),
    key("access.boards", Count(limits::BOARDS), Number(5.0), "Boards side by side on the platform"),
    key("access.lift", Length(limits::LIFT), Number(2000.0), "Greatest height of a lift"),
    key(
        "access.plate_height",
        Length(limits::PLATE_HEIGHT),
        Otherwise("not said: one is taken for the sheets, and asked", "2500"),
        "Height of the plates above the ground, of walls whose plate is at 0",
    ),
    key("access.people", Count(limits::CREW), Otherwise("everyone at work", "3"), "People on one platform at once"),
    key("access.stack", Count(limits::STACK), Number(20.0), "Timbers that stand as one stack on the platform"),
    key(
        "access.hire",
        Figure(limits::MONEY, "in money"),
        Otherwise("none, and no cost is worked out", "1400"),
        "Price of putting up, the weeks within it, and taking down",
    ),
    key("access.hire_weeks", Count(limits::HIRE_WEEKS), Number(6.0), "Weeks of hire within that price"),
    key(
        "access.extra_week",
        Figure(limits::MONEY, "in money"),
        Otherwise("none, and no cost of more weeks is worked out", "60"),
        "Price of each week more",
    ),
    key(
        "access.ground",
        Word(words::<Ground>),
        Otherwise("not said, and asked", "\"soft\""),
        "The ground that the access stands on",
    ),
    key("access.passers_by", Flag, Otherwise("not said, and asked", "true"), "People pass by below"),
    key("access.on_pavement", Flag, Otherwise("not said, and asked", "true"), "It stands on a pavement or road"),
    key("access.overhead_lines", Flag, Otherwise("not said, and asked", "true"), "Electric lines run overhead"),
    key("access.sheeted", Flag, Preset::Flag(false), "It is sheeted, or stands under a roof of its own"),
    key(
        "record.*.text",
        Statement,
        Required("\"Mixers and pallets stay off the back lift.\""),
        "What people on site say in place of the statement of this name",
    ),
];
