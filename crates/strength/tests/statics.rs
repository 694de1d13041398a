//! Frames and beams against the rows of `reference/strength_checks.json` and against what must always hold.
//!
//! What the rows are worth: FR-01..05 are closed forms that two frame codes agreed with; FR-06, 07 closed forms that one
//! frame code agreed with; FR-08..11 arithmetic of statics. None is printed in a book. The independent check of this
//! solver is `scripts/oracle_frames.py`.

use geometry::Angle;
use proptest::prelude::*;
use serde_json::Value;
use strength::statics::{Bar, Beam, BeamLoad, Frame, FrameFault, Hold, Load, Node, Support, Way};

/// N/mm for kN/m, and N for kN times this.
const KN: f64 = 1000.0;
/// N mm in a kN m.
const KN_M: f64 = 1e6;

/// The only row of a kind.
fn row(kind: &str) -> Value {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../reference/strength_checks.json");
    let text = std::fs::read_to_string(path).expect("the reference is there");
    let rows: Vec<Value> = serde_json::from_str(&text).expect("the reference is JSON");
    let mut found: Vec<Value> = rows.into_iter().filter(|r| r["kind"] == kind).collect();
    assert_eq!(found.len(), 1, "{kind}");
    found.remove(0)
}

/// A figure of a row by its path.
fn figure(row: &Value, path: &str) -> f64 {
    row.pointer(path).and_then(Value::as_f64).unwrap_or_else(|| panic!("{}: no {path}", row["id"]))
}

/// Compare with the expected figure of a row, to the tolerance of the row.
fn check(row: &Value, path: &str, got: f64) {
    let want = figure(row, &format!("/expected/{path}"));
    let rel = figure(row, "/tolerance/rel");
    assert!((got - want).abs() <= rel * want.abs().max(1e-9), "{} {path}: {got} is not {want}", row["id"]);
}

/// Load on plan (kN/m of plan) over a pair of rafters, as N/mm of each rafter's length.
fn on_plan(bars: impl Iterator<Item = usize>, w_plan: f64, cos: f64) -> Vec<Load> {
    bars.map(|bar| Load::Spread { bar, fx: [0.0; 2], fy: [-w_plan * cos; 2] }).collect()
}

/// Feet, ridge, collar ends: nodes 0, 4, 2, 1, 3; rafters are bars 0..4, from left foot over the ridge to the right one.
struct Pair {
    frame: Frame,
    loads: Vec<Load>,
}

fn pair(row: &Value, collar_at: f64, ea: f64, ei: f64) -> Pair {
    let span = 1000.0 * figure(row, "/inputs/span_m");
    let pitch = Angle::deg(figure(row, "/inputs/pitch"));
    let rise = span / 2.0 * pitch.tan();
    let (in_by, up) = (span / 2.0 * collar_at, rise * collar_at);
    let nodes = vec![
        Node { x: 0.0, y: 0.0 },
        Node { x: in_by, y: up },
        Node { x: span / 2.0, y: rise },
        Node { x: span - in_by, y: up },
        Node { x: span, y: 0.0 },
    ];
    let mut bars: Vec<Bar> = (0..4).map(|k| Bar::stiff(k, k + 1, ea, ei)).collect();
    bars[1].hinge_to = true;
    let supports = vec![Support::pin(0), Support::pin(4)];
    let loads = on_plan(0..4, figure(row, "/inputs/w_plan"), pitch.cos());
    Pair { frame: Frame { nodes, bars, supports }, loads }
}

const RIGID: f64 = 1e12;

#[test]
fn couple_roof() {
    let row = row("couple_roof");
    let pair = pair(&row, 0.5, RIGID, 1e11);
    let solved = pair.frame.solve(&[pair.loads]).unwrap();
    let answer = &solved.all()[0];
    check(&row, "thrust_H", answer.reactions[0][0] / KN);
    check(&row, "thrust_H", -answer.reactions[1][0] / KN);
    check(&row, "V", answer.reactions[0][1] / KN);
    check(&row, "M_rafter", answer.bars[0].m(answer.bars[0].length) / KN_M);
}

#[test]
fn close_couple() {
    let row = row("close_couple");
    let mut pair = pair(&row, 0.5, RIGID, 1e11);
    pair.frame.bars.push(Bar::pinned(0, 4, RIGID, 1e11));
    pair.frame.supports[1] = Support::roller(4);
    let solved = pair.frame.solve(&[pair.loads]).unwrap();
    let answer = &solved.all()[0];
    check(&row, "tie_T", answer.bars[4].n(0.0) / KN);
    check(&row, "M_rafter", answer.bars[0].m(answer.bars[0].length) / KN_M);
}

#[test]
fn collar_roof_with_free_and_with_held_feet() {
    let row = row("collar_roof");
    let (b, h) = (figure(&row, "/inputs/b_mm"), figure(&row, "/inputs/h_mm"));
    let ei = figure(&row, "/inputs/E") * b * h * h * h / 12.0;
    let mut pair = pair(&row, figure(&row, "/inputs/collar_height_fraction"), RIGID, ei);
    pair.frame.bars.push(Bar::pinned(1, 3, RIGID, ei));
    let held = pair.frame.solve(std::slice::from_ref(&pair.loads)).unwrap();
    let held = &held.all()[0];
    check(&row, "pinned_feet/collar_compression", -held.bars[4].n(0.0) / KN);
    check(&row, "pinned_feet/wall_thrust", held.reactions[0][0] / KN);
    check(&row, "pinned_feet/M_at_collar", held.bars[0].m(held.bars[0].length) / KN_M);
    pair.frame.supports[1] = Support::roller(4);
    let free = pair.frame.solve(&[pair.loads]).unwrap();
    let free = &free.all()[0];
    check(&row, "roller_feet/collar_tension", free.bars[4].n(0.0) / KN);
    check(&row, "roller_feet/M_at_collar", free.bars[0].m(free.bars[0].length) / KN_M);
    check(&row, "roller_feet/plate_spread_mm", free.nodes[4][0]);
    assert!(free.reactions[0][0].abs() < 1e-3);
}

#[test]
fn two_span_rafter() {
    let row = row("two_span_rafter");
    let pitch = Angle::deg(figure(&row, "/inputs/pitch"));
    let run = 1000.0 * figure(&row, "/inputs/plan_spans_m/0");
    let nodes = (0..3).map(f64::from).map(|k| Node { x: k * run, y: k * run * pitch.tan() }).collect();
    let bars = vec![Bar::stiff(0, 1, RIGID, 1e11), Bar::stiff(1, 2, RIGID, 1e11)];
    let supports = vec![Support::pin(0), Support::roller(1), Support::roller(2)];
    let loads = on_plan(0..2, figure(&row, "/inputs/w_plan"), pitch.cos());
    let solved = Frame { nodes, bars, supports }.solve(&[loads]).unwrap();
    let answer = &solved.all()[0];
    for k in 0..3 {
        check(&row, &format!("R/{k}"), answer.reactions[k][1] / KN);
    }
    let extremes = answer.bars[0].extremes();
    check(&row, "M_support", extremes.m_least.value / KN_M);
    check(&row, "M_span", extremes.m_most.value / KN_M);
}

#[test]
fn hip_rafter_triangular() {
    let row = row("hip_rafter_triangular");
    let length = 1000.0 * figure(&row, "/inputs/L_m");
    let (b, h) = (figure(&row, "/inputs/b_mm"), figure(&row, "/inputs/h_mm"));
    let ei = figure(&row, "/inputs/E") * b * h * h * h / 12.0;
    let beam = Beam { length, ei, supports: vec![0.0, length], hinges: vec![] };
    let w = [figure(&row, "/inputs/w_foot"), figure(&row, "/inputs/w_max_at_ridge")];
    let solved = beam.solve(&[vec![BeamLoad::Spread { from: 0.0, to: length, w }]]).unwrap().get(0).unwrap();
    check(&row, "R_foot", solved.reactions[0] / KN);
    check(&row, "R_ridge", solved.reactions[1] / KN);
    check(&row, "M_max", solved.extremes().m_most.value / KN_M);
    check(&row, "x_from_foot_m", solved.extremes().m_most.at / 1000.0);
    check(&row, "w_max_mm", solved.sag_most(0.0, length).value);
}

#[test]
fn valley_rafter_triangular() {
    let row = row("valley_rafter_triangular");
    let length = 1000.0 * figure(&row, "/inputs/L_m");
    let beam = Beam { length, ei: 1e11, supports: vec![0.0, length], hinges: vec![] };
    let w = [figure(&row, "/inputs/w_max_at_foot"), figure(&row, "/inputs/w_ridge")];
    let solved = beam.solve(&[vec![BeamLoad::Spread { from: 0.0, to: length, w }]]).unwrap().get(0).unwrap();
    check(&row, "R_foot", solved.reactions[0] / KN);
    check(&row, "R_ridge", solved.reactions[1] / KN);
    check(&row, "M_max", solved.extremes().m_most.value / KN_M);
}

#[test]
fn hip_load_geometry() {
    // Arithmetic of the shares of jack rafters: run² / 2 of roof on plan goes to the hip, from both sides.
    let row = row("hip_load_geometry");
    let (run, q) = (figure(&row, "/inputs/run_m"), figure(&row, "/inputs/q_plan"));
    let rise = run * Angle::deg(figure(&row, "/inputs/pitch")).tan();
    check(&row, "hip_true_length", (2.0 * run * run + rise * rise).sqrt());
    let plan = (2.0 * run * run).sqrt();
    let total = q * run * run / 2.0;
    check(&row, "total_load_on_hip", total);
    let w = 2.0 * total / plan;
    check(&row, "w_max_per_m_plan_of_hip", w);
    let length = plan * 1000.0;
    let beam = Beam { length, ei: 1e11, supports: vec![0.0, length], hinges: vec![] };
    let solved = beam.solve(&[vec![BeamLoad::Spread { from: 0.0, to: length, w: [0.0, w] }]]).unwrap().get(0).unwrap();
    check(&row, "R_foot", solved.reactions[0] / KN);
    check(&row, "R_ridge", solved.reactions[1] / KN);
    check(&row, "M_max", solved.extremes().m_most.value / KN_M);
}

#[test]
fn purlin_point_vs_udl() {
    let row = row("purlin_point_vs_udl");
    let length = 1000.0 * figure(&row, "/inputs/span_m");
    let force = KN * figure(&row, "/inputs/P_kN");
    let places: Vec<f64> = serde_json::from_value(row["inputs"]["positions_m"].clone()).unwrap();
    assert_eq!(places.len(), 6);
    let points = places.iter().map(|x| BeamLoad::At { at: 1000.0 * x, force }).collect();
    let beam = Beam { length, ei: 1e11, supports: vec![0.0, length], hinges: vec![] };
    let spread = vec![BeamLoad::all_along(&beam, 6.0 * force / length)];
    let solved = beam.solve(&[points, spread]).unwrap();
    check(&row, "R", solved.reactions(&[(0, 1.0)])[0] / KN);
    check(&row, "M_points", solved.get(0).unwrap().extremes().m_most.value / KN_M);
    check(&row, "M_udl", solved.get(1).unwrap().extremes().m_most.value / KN_M);
}

#[test]
fn trimmer_point_load() {
    let row = row("trimmer_point_load");
    let length = 1000.0 * figure(&row, "/inputs/span_m");
    let at = 1000.0 * figure(&row, "/inputs/a_m");
    let beam = Beam { length, ei: 1e11, supports: vec![0.0, length], hinges: vec![] };
    let point = vec![BeamLoad::At { at, force: KN * figure(&row, "/inputs/P_kN") }];
    let spread = vec![BeamLoad::all_along(&beam, figure(&row, "/inputs/w_kN_per_m"))];
    let solved = beam.solve(&[point, spread]).unwrap().combine(&[(0, 1.0), (1, 1.0)]).unwrap();
    check(&row, "R_near", solved.reactions[0] / KN);
    check(&row, "R_far", solved.reactions[1] / KN);
    check(&row, "M_at_load", solved.at(at).m / KN_M);
}

#[test]
fn a_cantilever_and_its_spring() {
    // PL³/3EI at the tip; a spring of 3EI/L³ under the tip takes half the load.
    let (length, ei) = (2000.0, 1e11);
    let nodes = vec![Node { x: 0.0, y: 0.0 }, Node { x: length, y: 0.0 }];
    let mut frame =
        Frame { nodes, bars: vec![Bar::stiff(0, 1, 1e8, ei)], supports: vec![Support::at(0, true, true, true)] };
    let tip = vec![Load::Node { node: 1, fx: 0.0, fy: -900.0, m: 0.0 }];
    let free = frame.solve(std::slice::from_ref(&tip)).unwrap().all()[0].nodes[1][1];
    let k = 3.0 * ei / (length * length * length);
    assert!((free + 900.0 / k).abs() < 1e-9 * free.abs());
    frame.supports.push(Support { node: 1, x: Hold::Free, y: Hold::Spring(k), turn: Hold::Free, axis: [1.0, 0.0] });
    let sprung = frame.solve(&[tip]).unwrap();
    assert!((sprung.all()[0].reactions[1][1] - 450.0).abs() < 1e-6);
}

#[test]
fn a_long_chain_of_short_bars_is_no_mechanism() {
    // One bar or sixty, a cantilever is a cantilever.
    let (bars, length, ei) = (60u32, 6000.0, 1e11);
    let nodes = (0..=bars).map(|k| Node { x: length * f64::from(k) / f64::from(bars), y: 0.0 }).collect();
    let chain = (0..bars as usize).map(|k| Bar::stiff(k, k + 1, 1e8, ei)).collect();
    let frame = Frame { nodes, bars: chain, supports: vec![Support::at(0, true, true, true)] };
    let tip = frame.solve(&[vec![Load::Node { node: 60, fx: 0.0, fy: -900.0, m: 0.0 }]]).unwrap().all()[0].nodes[60][1];
    let want = -900.0 * length * length * length / (3.0 * ei);
    assert!((tip - want).abs() < 1e-6 * want.abs(), "{tip} {want}");
}

#[test]
fn a_roller_square_to_the_slope_pushes_square_to_the_slope() {
    let nodes = vec![Node { x: 0.0, y: 0.0 }, Node { x: 3000.0, y: 4000.0 }];
    let supports = vec![Support::pin(0), Support::roller_along(1, [-4.0, 3.0])];
    let frame = Frame { nodes, bars: vec![Bar::stiff(0, 1, 1e8, 1e11)], supports };
    let solved = frame.solve(&[vec![Load::Spread { bar: 0, fx: [0.0; 2], fy: [-1.0; 2] }]]).unwrap();
    let [x, y, _] = solved.all()[0].reactions[1];
    // 5000 N in all, 3/5 of it square to the bar, half of that at this end.
    assert!((x + 1200.0).abs() < 1e-6 && (y - 900.0).abs() < 1e-6, "{x} {y}");
}

#[test]
fn what_does_not_stand_is_named() {
    let node = |x, y| Node { x, y };
    let square = vec![node(0.0, 0.0), node(0.0, 2000.0), node(3000.0, 2000.0), node(3000.0, 0.0)];
    let bars: Vec<Bar> = (0..3).map(|k| Bar::pinned(k, k + 1, 1e8, 1e11)).collect();
    let supports = vec![Support::pin(0), Support::pin(3)];
    let four_bars = Frame { nodes: square, bars, supports };
    let fault = four_bars.solve(&[]).unwrap_err();
    assert!(matches!(fault, FrameFault::Mechanism { node: 1 | 2, way: Way::Sideways }), "{fault}");
    let beam = Beam { length: 3000.0, ei: 1e11, supports: vec![0.0], hinges: vec![] };
    assert!(matches!(beam.solve(&[]).unwrap_err(), FrameFault::Mechanism { way: Way::UpAndDown, .. }));
    let beam = Beam { length: 3000.0, ei: 1e11, supports: vec![0.0, 3000.0], hinges: vec![1200.0] };
    assert!(matches!(beam.solve(&[]).unwrap_err(), FrameFault::Mechanism { node: 1, way: Way::UpAndDown }));
    assert_eq!(Frame::default().solve(&[]).unwrap_err(), FrameFault::Empty);
    let mut bad = four_bars.clone();
    bad.nodes[1] = bad.nodes[0];
    assert_eq!(bad.solve(&[]).unwrap_err(), FrameFault::NoLength { bar: 0 });
    bad.nodes[1].x = f64::NAN;
    assert!(matches!(bad.solve(&[]).unwrap_err(), FrameFault::NotFinite { what: "node", index: 1 }));
    let mut turned = four_bars;
    turned.bars.push(Bar::pinned(0, 2, 1e8, 1e11));
    let twist = vec![Load::Node { node: 2, fx: 0.0, fy: 0.0, m: 1.0 }];
    assert!(matches!(turned.solve(&[twist]).unwrap_err(), FrameFault::Mechanism { node: 2, way: Way::Turning }));
}

/// A beam on supports with a few loads.
fn beams() -> impl Strategy<Value = (Beam, Vec<Vec<BeamLoad>>)> {
    let load = (0.0..0.9f64, 0.05..1.0f64, -2.0..2.0f64, -2.0..2.0f64, any::<bool>());
    (
        1000.0..9000.0f64,
        1e10..1e12f64,
        prop::collection::vec(0.02..0.98f64, 1..4),
        prop::collection::vec(prop::collection::vec(load, 1..4), 2..4),
    )
        .prop_map(|(length, ei, inner, cases)| {
            let supports = [0.0].into_iter().chain(inner).map(|s| s * length).collect();
            let on = |(from, share, a, b, spread): (f64, f64, f64, f64, bool)| {
                if spread {
                    let to = (from + share * (1.0 - from)) * length;
                    BeamLoad::Spread { from: from * length, to, w: [a, b] }
                } else {
                    BeamLoad::At { at: from * length, force: a * 1000.0 }
                }
            };
            let cases = cases.into_iter().map(|loads| loads.into_iter().map(on).collect()).collect();
            (Beam { length, ei, supports, hinges: vec![] }, cases)
        })
}

proptest! {
    #[test]
    fn cases_add_up((beam, cases) in beams(), a in -2.0..2.0f64, b in -2.0..2.0f64) {
        let solved = beam.solve(&cases).unwrap();
        let sum = solved.combine(&[(0, a), (1, b)]).unwrap();
        let (one, two) = (solved.get(0).unwrap(), solved.get(1).unwrap());
        let big = one.reactions.iter().chain(&two.reactions).fold(1.0f64, |m, r| m.max(r.abs()));
        for k in 0..sum.reactions.len() {
            prop_assert!((sum.reactions[k] - a * one.reactions[k] - b * two.reactions[k]).abs() < 1e-9 * big);
        }
        for part in 1..20 {
            let x = beam.length * f64::from(part) / 20.0;
            let m = a * one.at(x).m + b * two.at(x).m;
            prop_assert!((sum.at(x).m - m).abs() < 1e-9 * big * beam.length);
            let sag = a * one.sag(x) + b * two.sag(x);
            prop_assert!((sum.sag(x) - sag).abs() < 1e-9 * big * beam.length.powi(3) / beam.ei);
        }
    }

    #[test]
    fn extremes_are_never_passed((beam, cases) in beams()) {
        let solved = beam.solve(&cases).unwrap().get(0).unwrap();
        let (extremes, sag) = (solved.extremes(), solved.sag_most(0.0, beam.length));
        let big = solved.reactions.iter().fold(1.0f64, |m, r| m.max(r.abs()));
        for part in 0..=200 {
            let x = beam.length * f64::from(part) / 200.0;
            let here = solved.at(x);
            let slack = 1e-9 * big * beam.length;
            prop_assert!(here.m <= extremes.m_most.value + slack && here.m >= extremes.m_least.value - slack);
            prop_assert!(here.v <= extremes.v_most.value + slack && here.v >= extremes.v_least.value - slack);
            prop_assert!(solved.sag(x).abs() <= sag.value.abs() * (1.0 + 1e-6) + 1e-9);
        }
        prop_assert!((solved.at(extremes.m_most.at).m - extremes.m_most.value).abs() < 1e-6 * big * beam.length);
    }

    #[test]
    fn a_mirrored_beam_has_mirrored_answers((beam, cases) in beams()) {
        let l = beam.length;
        let mut mirrored = beam.clone();
        mirrored.supports.iter_mut().for_each(|s| *s = l - *s);
        let turned: Vec<Vec<BeamLoad>> = cases.iter().map(|loads| loads.iter().map(|load| match *load {
            BeamLoad::At { at, force } => BeamLoad::At { at: l - at, force },
            BeamLoad::Spread { from, to, w } => BeamLoad::Spread { from: l - to, to: l - from, w: [w[1], w[0]] },
        }).collect()).collect();
        let (one, two) = (beam.solve(&cases).unwrap(), mirrored.solve(&turned).unwrap());
        for case in 0..cases.len() {
            let (a, b) = (one.reactions(&[(case, 1.0)]), two.reactions(&[(case, 1.0)]));
            let big = a.iter().fold(1.0f64, |m, r| m.max(r.abs()));
            for (a, b) in a.iter().zip(&b) {
                prop_assert!((a - b).abs() < 1e-7 * big);
            }
        }
    }

    #[test]
    fn stiffer_never_sags_more((beam, cases) in beams(), by in 1.0..20.0f64) {
        let stiffer = Beam { ei: beam.ei * by, ..beam.clone() };
        for case in 0..cases.len() {
            let soft = beam.solve(&cases).unwrap().get(case).unwrap().sag_most(0.0, beam.length);
            let stiff = stiffer.solve(&cases).unwrap().get(case).unwrap().sag_most(0.0, beam.length);
            prop_assert!(stiff.value.abs() <= soft.value.abs() * (1.0 + 1e-9) + 1e-12);
        }
    }

    #[test]
    fn a_stiffer_collar_never_lets_the_feet_spread_more(
        pitch in 20.0..60.0f64, up in 0.1..0.9f64, w in 0.1..3.0f64, ea in 1e6..1e9f64, by in 1.0..50.0f64,
    ) {
        let spread = |ea: f64| {
            let rise = 2400.0 * Angle::deg(pitch).tan();
            let nodes = vec![
                Node { x: 0.0, y: 0.0 }, Node { x: 2400.0 * up, y: rise * up }, Node { x: 2400.0, y: rise },
                Node { x: 4800.0 - 2400.0 * up, y: rise * up }, Node { x: 4800.0, y: 0.0 },
            ];
            let mut bars: Vec<Bar> = (0..4).map(|k| Bar::stiff(k, k + 1, 8e7, 1.5e11)).collect();
            bars[1].hinge_to = true;
            bars.push(Bar::pinned(1, 3, ea, 1.5e11));
            let frame = Frame { nodes, bars, supports: vec![Support::pin(0), Support::roller(4)] };
            let loads = (0..4).map(|bar| Load::Spread { bar, fx: [0.0; 2], fy: [-w; 2] }).collect();
            let solved = frame.solve(&[loads]).unwrap();
            let answer = &solved.all()[0];
            // Alike on both sides, and the reactions carry what is loaded.
            let total: f64 = answer.reactions.iter().map(|r| r[1]).sum();
            assert!((total - 2.0 * w * (2400.0f64.powi(2) + rise * rise).sqrt()).abs() < 1e-6 * total);
            assert!((answer.reactions[0][1] - answer.reactions[1][1]).abs() < 1e-6 * total);
            answer.nodes[4][0]
        };
        prop_assert!(spread(ea * by) <= spread(ea) * (1.0 + 1e-9));
    }
}
