//! Checks of whole packs as they are laid out: nothing off the sheet, no words
//! over others, nothing too small to read.

use roof::solution::*;

use crate::fixture::hipped;
use crate::layout::overlap;
use crate::sheet::{Item, Sheet, Text};
use crate::text::SMALLEST_PT;
use crate::{card, cover, lists, page, strips};

/// Letters may come this near before they count as touching, mm.
const SLACK: f64 = 0.25;

fn sheets(solution: &Solution) -> Vec<Sheet> {
    let mut pages = cover::pages(solution);
    pages.extend(strips::pages(solution));
    for piece in &solution.pieces {
        pages.extend(card::pages(solution, piece, None));
    }
    pages.extend(lists::pages(solution));
    page::frame(pages, solution)
}

fn texts(sheet: &Sheet) -> impl Iterator<Item = &Text> {
    sheet.items.iter().filter_map(|i| if let Item::Text(t) = i { Some(t) } else { None })
}

/// Everything wrong with the layout of a pack, in words.
fn faults(solution: &Solution) -> Vec<String> {
    faults_of(&sheets(solution))
}

/// Everything wrong with the layout of sheets, in words.
pub(crate) fn faults_of(sheets: &[Sheet]) -> Vec<String> {
    let mut faults = Vec::new();
    for (number, sheet) in sheets.iter().enumerate() {
        let number = number + 1;
        let all: Vec<&Text> = texts(sheet).collect();
        for (i, text) in all.iter().enumerate() {
            let corners = text.corners();
            let inside = corners.iter().all(|&[x, y]| {
                (page::LEFT - 0.1..=page::RIGHT + 0.1).contains(&x) && (5.0..=page::HEIGHT - 9.0).contains(&y)
            });
            if !inside {
                faults.push(format!("page {number}: `{}` runs off the sheet", text.text));
            }
            if text.style.size_pt < SMALLEST_PT {
                faults.push(format!("page {number}: `{}` is too small", text.text));
            }
            for other in &all[i + 1..] {
                if overlap(&corners, &other.corners(), SLACK) {
                    faults.push(format!("page {number}: `{}` runs into `{}`", text.text, other.text));
                }
            }
        }
        for item in &sheet.items {
            if let Item::Path { points, .. } = item
                && !points.iter().all(|p| {
                    (page::LEFT - 1.5..=page::RIGHT + 1.5).contains(&p[0]) && (5.0..=page::HEIGHT - 5.0).contains(&p[1])
                })
            {
                faults.push(format!("page {number}: a line runs off the sheet: {points:?}"));
            }
        }
    }
    faults
}

fn assert_clean(name: &str, solution: &Solution) {
    let faults = faults(solution);
    assert!(faults.is_empty(), "{name}: {} faults\n{}", faults.len(), faults[..faults.len().min(12)].join("\n"));
}

#[test]
fn the_hipped_roof_is_laid_out_cleanly() {
    assert_clean("hipped", &hipped());
}

#[test]
fn feet_and_inches_are_laid_out_cleanly() {
    let mut solution = hipped();
    solution.show = "feet-inches".into();
    assert_clean("feet", &solution);
}

#[test]
fn very_long_names_are_laid_out_cleanly() {
    let mut solution = hipped();
    let long = "a very long name that someone gave to everything in this job, at length and with averyverylongwordwithoutaspaceinit";
    solution.title = long.into();
    solution.date = Some(long.into());
    solution.revision = Some(long.into());
    let rename = |mark: &mut String| mark.push_str(&long.replace(' ', "_"));
    for m in &mut solution.members {
        rename(&mut m.mark);
        for c in &mut m.cuts {
            c.name.push_str(long);
            c.against = Some(long.into());
        }
        m.marks.iter_mut().for_each(|t| t.name.push_str(long));
        m.deductions.iter_mut().for_each(|d| d.why.push_str(long));
    }
    for p in &mut solution.pieces {
        rename(&mut p.mark);
        p.members.iter_mut().for_each(rename);
    }
    for s in &mut solution.setting_out {
        s.name.push_str(long);
        s.from.push_str(long);
        s.stations.iter_mut().for_each(|s| rename(&mut s.mark));
    }
    solution.notices.iter_mut().for_each(|n| n.text = long.repeat(9));
    solution.plan.walls.iter_mut().for_each(|w| w.id.push_str("LONG"));
    assert_clean("long names", &solution);
}

#[test]
fn crowded_strips_and_cards_are_laid_out_cleanly() {
    let mut solution = hipped();
    // Stations in a heap, a card with many cuts and marks, many notices.
    for s in &mut solution.setting_out {
        let more: Vec<Station> = s
            .stations
            .iter()
            .map(|x| Station { near_mm: x.near_mm + 3.0, far_mm: x.far_mm + 3.0, ..x.clone() })
            .collect();
        s.stations.extend(more);
        s.stations.sort_by(|a, b| a.near_mm.total_cmp(&b.near_mm));
    }
    for m in &mut solution.members {
        for _ in 0..3 {
            let cuts = m.cuts.clone();
            m.cuts.extend(cuts);
            let marks = m.marks.clone();
            m.marks.extend(marks);
            let deductions = m.deductions.clone();
            m.deductions.extend(deductions);
        }
    }
    for _ in 0..5 {
        let notices = solution.notices.clone();
        solution.notices.extend(notices);
    }
    assert_clean("crowded", &solution);
}

#[test]
fn a_plan_of_short_walls_is_laid_out_cleanly() {
    let mut solution = hipped();
    // A saw-tooth front of 40 walls of 400 mm.
    let mut corners = vec![[0.0, 0.0], [8000.0, 0.0]];
    for i in (0..20).rev() {
        let x = f64::from(i) * 400.0;
        corners.extend([[x + 400.0, 5000.0 + f64::from(i % 2) * 300.0], [x, 5000.0 + f64::from(i % 2) * 300.0]]);
    }
    solution.plan.walls = (0..corners.len())
        .map(|i| {
            let (from, to) = (corners[i], corners[(i + 1) % corners.len()]);
            WallOut { id: format!("W{i}"), from, to, length_mm: 400.0, ..solution.plan.walls[0].clone() }
        })
        .collect();
    solution.plan.corners = corners;
    assert_clean("short walls", &solution);
}

/// Solutions that no solver should return, but a file may hold.
pub fn odd() -> Vec<(&'static str, Solution)> {
    let base = hipped();
    let mut nothing = base.clone();
    nothing.members.clear();
    nothing.pieces.clear();
    nothing.setting_out.clear();
    nothing.lines.clear();
    nothing.notices.clear();
    nothing.plan.walls.clear();
    nothing.plan.corners.clear();
    let mut no_members = base.clone();
    no_members.members.clear();
    let mut bad = base.clone();
    let mut huge = base.clone();
    let mut flat = base.clone();
    for (solution, value) in [(&mut bad, f64::NAN), (&mut huge, 1e300), (&mut flat, 0.0)] {
        solution.totals.rise_mm = value;
        solution.plan.corners[1] = [value, value];
        solution.plan.walls[0].to = [value; 2];
        solution.plan.walls[0].length_mm = value;
        solution.lines[0].from = [value; 3];
        for s in &mut solution.setting_out {
            s.length_mm = value;
        }
        for m in &mut solution.members {
            m.true_length_mm = value;
            m.cut_length_mm = value;
            m.pitch_deg = value;
            m.axis.to = [value; 3];
            m.size.depth_mm = value;
            m.solid.points[0] = [value; 3];
            m.bench.points.iter_mut().for_each(|p| *p = [value; 3]);
            m.marks.iter_mut().for_each(|t| t.left_mm = value);
            if let Some(b) = &mut m.birdsmouth {
                b.seat_mm = value;
            }
        }
        let mut strip = solution.setting_out[0].clone();
        strip.length_mm = 8400.0;
        strip.stations.iter_mut().for_each(|s| s.near_mm = value);
        solution.setting_out.push(strip);
    }
    let mut broken_solid = base.clone();
    for m in &mut broken_solid.members {
        m.solid.faces.push(vec![0, 99_999, 2]);
        m.solid.faces.push(vec![]);
        m.solid.faces.push(vec![1, 1, 1]);
        m.bench.points.truncate(3);
        m.bench.along = [0.0; 3];
    }
    let mut many = base.clone();
    while many.members.len() < 5000 {
        let n = many.members.len();
        let mut member = base.members[n % base.members.len()].clone();
        member.mark = format!("X{n}");
        let shift = (n / base.members.len()) as f64 * 200.0;
        member.solid.points.iter_mut().for_each(|p| p[1] += shift);
        many.pieces[6].members.push(member.mark.clone());
        many.members.push(member);
    }
    vec![
        ("nothing at all", nothing),
        ("pieces without timbers", no_members),
        ("not a number", bad),
        ("huge", huge),
        ("no size", flat),
        ("broken solids", broken_solid),
        ("5000 timbers", many),
    ]
}

#[test]
fn odd_solutions_are_laid_out_cleanly() {
    for (name, solution) in odd() {
        assert_clean(name, &solution);
    }
}

#[test]
fn a_scaled_plan_measures_true() {
    // Wall A, 8400 long, must be 8400 / scale mm long on paper.
    let solution = hipped();
    let mut sheet = Sheet::new(page::WIDTH, page::HEIGHT);
    let room = crate::layout::Room { x: 10.0, y: 10.0, w: 200.0, h: 150.0 };
    let drawn = crate::plan::draw(&mut sheet, &solution, crate::plan::Layer::Rafters, room).unwrap();
    assert_eq!(drawn.scale, 50.0);
    assert!(drawn.unplaced.is_empty(), "{:?}", drawn.unplaced);
    let found = sheet.items.iter().any(|item| match item {
        Item::Path { points, .. } if points.len() == 2 => {
            let [a, b] = [points[0], points[1]];
            (a[1] - b[1]).abs() < 1e-9 && ((a[0] - b[0]).abs() - 168.0).abs() < 1e-9
        }
        _ => false,
    });
    assert!(found, "no line of 168 mm");
}

#[test]
fn every_piece_has_its_card_and_every_timber_its_mark_on_it() {
    let solution = hipped();
    for piece in &solution.pieces {
        let pages = card::pages(&solution, piece, None);
        let words: Vec<&str> = texts(&pages[0].sheet).map(|t| t.text.as_str()).collect();
        assert!(words.contains(&piece.mark.as_str()), "{words:?}");
        assert!(words.contains(&format!("cut {}", piece.count).as_str()), "{words:?}");
        let member = solution.members.iter().find(|m| m.mark == piece.mark).unwrap();
        let length = job::written::Lengths::Millimetres.write(member.true_length_mm);
        assert!(words.contains(&length.as_str()), "{}: no {length} in {words:?}", piece.mark);
        for cut in &member.cuts {
            let angle = job::written::degrees(cut.face_angle_deg);
            assert!(words.contains(&angle.as_str()), "{}: no {angle}", piece.mark);
        }
    }
}

#[test]
fn every_timber_stands_on_its_strip() {
    let solution = hipped();
    let pages = strips::pages(&solution);
    let words: Vec<&str> = pages.iter().flat_map(|p| texts(&p.sheet)).map(|t| t.text.as_str()).collect();
    for station in solution.setting_out.iter().flat_map(|s| &s.stations) {
        let near = job::written::Lengths::Millimetres.write(station.near_mm);
        assert!(words.contains(&station.mark.as_str()), "{}", station.mark);
        assert!(words.contains(&near.as_str()), "{near}");
    }
}

#[test]
fn a_hip_with_six_cuts_keeps_to_one_page() {
    let mut solution = hipped();
    let hip = solution.members.iter_mut().find(|m| m.mark == "H1").unwrap();
    let cheek = Cut { name: "head cheek, facing left".into(), against: Some("Ridge-1".into()), ..hip.cuts[3].clone() };
    hip.cuts = vec![cheek; 6];
    let piece = solution.pieces.iter().find(|p| p.mark == "H1").unwrap();
    assert_eq!(card::pages(&solution, piece, None).len(), 1);
}

#[test]
fn only_a_head_with_one_bevel_comes_from_the_offcut_of_its_mirror() {
    let mut solution = hipped();
    let words = |solution: &Solution, mark: &str| {
        let piece = solution.pieces.iter().find(|p| p.mark == mark).unwrap();
        let page = &card::pages(solution, piece, None)[0];
        texts(&page.sheet).map(|t| t.text.clone()).collect::<Vec<_>>().join("\n")
    };
    assert!(words(&solution, "A16").contains("turned end over end"));
    // A square head: the offcut is of no use.
    solution.members.iter_mut().flat_map(|m| &mut m.cuts).for_each(|c| c.edge_angle_deg = 0.0);
    assert!(words(&solution, "A16").contains("to the other hand"));
}
