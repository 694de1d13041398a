//! Ground, passers-by, falling offcuts, lines overhead.

use super::super::rules::Needed;
use super::super::statement::{Basis, Blank, Row, Statement};
use super::super::{AccessFault, figures};
use super::{Facts, M, of_figure, of_habit, of_job};
use job::Ground;

pub(super) fn rows(facts: &Facts<'_>) -> Result<Vec<Row>, AccessFault> {
    let mut rows = ground(facts)?;
    passers_by(facts, &mut rows);
    let height = facts.layout.highest_mm / M;
    let speed = facts.need(Needed::OffcutSpeed)?;
    let throw = figures::throw(height, speed.own());
    let text = format!(
        "An offcut knocked sideways off the highest platform lands {} out at least; wind, bounce and long pieces go further. Keep people out of more than that. Cut over the platform, never over the edge.",
        facts.at_least(throw * M)
    );
    rows.push(Row::Said(
        Statement::new("access-offcuts", text, "free fall without drag; no legal distance exists", Basis::Derived)
            .with("at least", throw, "m"),
    ));
    rows.push(of_habit(
        "access-exclusion",
        "The ground below open work is marked and kept clear while anything is cut, lifted or fixed; nothing is thrown down.",
    ));
    rows.push(match facts.job.access.overhead_lines {
        Some(true) => of_job(
            "access-overhead",
            "access.overhead_lines",
            "Electric lines run overhead: nothing goes up before their operator has said how near anybody and anything may come.",
        ),
        Some(false) => of_job("access-overhead", "access.overhead_lines", "No electric lines run overhead."),
        None => Row::Blank(Blank::new(
            "access-overhead",
            "Do electric lines run overhead or to the building? Ask their operator before anything goes up.",
            "who is in charge of the site",
        )),
    });
    Ok(rows)
}

fn ground(facts: &Facts<'_>) -> Result<Vec<Row>, AccessFault> {
    let sole = facts.need(Needed::SoleBoard)?;
    let spread = format!("Sole boards of {} at least lie under every two standards on soft ground.", sole.written());
    let (text, more) = match facts.job.access.ground {
        None => {
            let blank = Blank::new(
                "access-ground",
                "What does it stand on: firm and level, soft or filled, sloping? Drains, cellars, trenches near it?",
                "who is in charge of the site",
            );
            return Ok(vec![Row::Blank(blank), of_figure("access-sole-boards", sole, spread)]);
        }
        Some(Ground::Firm) => ("The ground is firm and level: base plates on sole boards all the same.", None),
        Some(Ground::Soft) => ("The ground is soft or filled: the designer says what spreads the load.", Some(spread)),
        Some(Ground::Sloping) => (
            "The ground slopes: sole boards are let in level, and kept back from edges and trenches; the designer says how.",
            Some(spread),
        ),
    };
    let mut rows = vec![of_job("access-ground", "access.ground", text)];
    rows.extend(more.map(|text| of_figure("access-sole-boards", sole, text)));
    Ok(rows)
}

fn passers_by(facts: &Facts<'_>, rows: &mut Vec<Row>) {
    match facts.job.access.passers_by {
        None => rows.push(Row::Blank(Blank::new(
            "access-passers-by",
            "Who passes below: neighbours, children, other trades, the people of the house?",
            "who is in charge of the site",
        ))),
        Some(false) => rows.push(of_job("access-passers-by", "access.passers_by", "Nobody passes by below.")),
        Some(true) => {
            let text = "People pass by below: brick guards or sheeting on every lift above them, with toe boards, and a fan or covered way where they walk close.";
            rows.push(of_job("access-passers-by", "access.passers_by", text));
            if let Some(fence) = facts.rules.get("fence-height") {
                let text =
                    format!("A fence of about {} keeps people off the scaffold and from climbing it.", fence.written());
                rows.push(of_figure("access-fence", fence, text));
            }
        }
    }
    match facts.job.access.on_pavement {
        None => rows.push(Row::Blank(Blank::new(
            "access-pavement",
            "Does any of it stand on or over a pavement or road?",
            "who is in charge of the site",
        ))),
        Some(false) => {
            rows.push(of_job("access-pavement", "access.on_pavement", "Nothing of it stands on a pavement or road."))
        }
        Some(true) => pavement(facts, rows),
    }
}

fn pavement(facts: &Facts<'_>, rows: &mut Vec<Row>) {
    let (licence, source) = if facts.job.region == "uk" {
        (
            "It stands on a pavement or road: it needs the licence of the highway authority before it goes up.",
            "Highways Act 1980 s.169",
        )
    } else {
        ("It stands on a pavement or road: it needs the leave of the authority of the place.", "rules of the place")
    };
    rows.push(Row::Said(Statement::new("access-pavement", licence, source, Basis::Published)));
    let get = |name: &str| facts.rules.get(name);
    if let (Some(room), Some(width), Some(other)) =
        (get("covered-way-headroom"), get("footway-clear"), get("passage-other"))
    {
        let text = format!(
            "A covered way has {} of headroom and {} clear at one authority, {} clear at another: theirs governs.",
            room.written(),
            width.written(),
            other.written()
        );
        rows.push(of_figure("access-covered-way", room, text));
    }
    if let (Some(least), Some(most), Some(route)) =
        (get("pavement-lift-headroom-min"), get("pavement-lift-headroom-max"), get("pavement-route-width"))
    {
        let text = format!(
            "The first lift over a pavement stands {} to {} up, over a way {} wide.",
            least.written(),
            most.written(),
            route.written()
        );
        rows.push(of_figure("access-pavement-lift", least, text));
    }
    if let Some(road) = get("clear-to-carriageway") {
        rows.push(of_figure("access-carriageway", road, format!("It keeps {} off the carriageway.", road.written())));
    }
}
