//! What must hold whatever the figures, and what can be counted by hand.

use super::{annex, foot, part, round, wood};
use proptest::prelude::*;
use strength::eurocode::joints::bolts::{Bolt, net_area_mm2, net_tension};
use strength::eurocode::joints::lap::{Lap, Limit};
use strength::eurocode::joints::lapped::Timber;
use strength::eurocode::joints::nails::{BoreFirst, Nail, bore_first};
use strength::eurocode::joints::rafter_foot::Instead;
use strength::eurocode::joints::spacing::Spacings;
use strength::eurocode::joints::strap::{Held, Strap, along_wall, steel_n};
use strength::eurocode::joints::{BEYOND, Part, bearing, collar, declared, in_a_row, lapped, slip};
use strength::working::Working;

#[test]
fn a_scarf_without_plates_carries_no_moment() {
    assert!((declared::bare_scarf(1.0, &mut Working::off()).ratio - BEYOND).abs() < 1e-9);
    assert!(declared::bare_scarf(0.0, &mut Working::off()).ratio.abs() < 1e-9);
}

#[test]
fn what_does_not_fit_says_what_would() {
    let class = wood("C16");
    let foot = foot(&class, 97.0);
    let few = foot.check(1200.0, 0.9, annex(), &mut Working::off());
    assert!(few.nailed.fits && few.instead.is_empty(), "{few:?}");
    let many = foot.check(6000.0, 0.9, annex(), &mut Working::off());
    assert!(!many.nailed.fits && many.nailed.used.ratio > 1.0, "{many:?}");
    assert!(many.instead.iter().any(|other| matches!(other, Instead::DeeperJoist { .. })), "{many:?}");
    let words: Vec<String> = many.instead.iter().map(Instead::words).collect();
    assert!(words.iter().all(|text| !text.is_empty()));
}

#[test]
fn places_keep_the_distances_in_both_timbers() {
    let class = wood("C16");
    let nail = round(3.35, 75.0, 7.0);
    for (first, second) in [(0.0, 30.0), (0.0, 35.0), (0.0, 50.0), (0.0, 90.0), (10.0, 40.0)] {
        let lap = Lap::rectangle(160.0, 120.0, first, second, true);
        let spacings = [0, 1].map(|t| Spacings::nail(&nail, class.rho_k, lap.angle_deg(t), annex()));
        let fit = lap.fit(&spacings, 100, &mut Working::off());
        assert_eq!(fit.places.len() as u32, fit.count());
        assert!(fit.count() > 3, "{first} {second}: {fit:?}");
        for (i, p) in fit.places.iter().enumerate() {
            assert!(p[1] >= spacings[0].free_edge_mm - 1e-3 && p[1] <= 120.0 - spacings[0].free_edge_mm + 1e-3);
            for q in &fit.places[..i] {
                for (grain, spacing) in lap.grain_deg.iter().zip(&spacings) {
                    let a = geometry::Angle::deg(*grain);
                    let (x, y) = (p[0] - q[0], p[1] - q[1]);
                    let (along, across) = (x * a.cos() + y * a.sin(), y * a.cos() - x * a.sin());
                    let apart = along.abs() >= spacing.along_mm - 1e-3 || across.abs() >= spacing.across_mm - 1e-3;
                    assert!(apart, "{first} {second}: {p:?} {q:?}");
                }
            }
        }
    }
}

#[test]
fn a_lap_counted_by_hand() {
    // 4 mm nails in C16, force along both grains: a1 40, a2 20, loaded ends 60, edges 20 mm. On 200 × 97, both timbers
    // ending: 200 − 60 − 60 = 80 along, 97 − 40 = 57 across: 3 columns in 3 rows.
    let nail = round(4.0, 100.0, 8.0);
    let spacings = [Spacings::nail(&nail, 310.0, 0.0, annex()); 2];
    let fit = Lap::rectangle(200.0, 97.0, 0.0, 0.0, true).fit(&spacings, 100, &mut Working::off());
    assert_eq!((fit.count(), fit.rows(), fit.columns()), (9, 3, 3), "{fit:?}");
    // On 100 × 97 the ends leave nothing.
    let none = Lap::rectangle(100.0, 97.0, 0.0, 0.0, true).fit(&spacings, 100, &mut Working::off());
    assert_eq!(none.count(), 0);
    assert!(matches!(none.limited_by, Limit::EndOfFirst | Limit::EndOfSecond), "{none:?}");
}

#[test]
fn straps_hold_by_the_lesser_of_steel_and_nails() {
    let class = wood("C16");
    let strap = Strap { nail: round(3.35, 50.0, 7.0), nails: 4, apart_mm: 50.0, timber: part(&class, 47.0, 0.0) };
    let held = strap.holds(1.1, annex(), &mut Working::off());
    assert!(held.nails_n > 0.0 && held.design_n <= held.steel_n);
    assert!((steel_n(annex(), &mut Working::off()) - 10_500.0).abs() < 1.0);
    let straps = along_wall(1500.0, 7000.0, &held, annex(), &mut Working::off()).expect("straps");
    assert!(straps.used.ratio <= 1.0 && straps.apart_mm <= 2000.0);
    let calm = along_wall(0.0, 7000.0, &held, annex(), &mut Working::off()).expect("straps");
    assert_eq!(calm.count, 4);
    let nothing = Held { steel_n: 0.0, nails_n: 0.0, design_n: 0.0 };
    assert!(along_wall(1500.0, 7000.0, &nothing, annex(), &mut Working::off()).is_none());
}

#[test]
fn a_collar_is_bolted_within_its_lap() {
    let class = wood("C24");
    let timber = Timber { wood: &class, thickness_mm: 47.0, depth_mm: 147.0 };
    let bolt = Bolt::black(12.0, annex());
    let single = lapped::Fastener::Bolts(bolt);
    let pair = lapped::Fastener::BoltsInPair(bolt);
    let mut collar =
        collar::Collar { collar: timber, rafter: timber, pitch_deg: 40.0, fastener: single, turns_round: true };
    let one = collar.check(3000.0, 0.9, annex(), &mut Working::off());
    collar.fastener = pair;
    let two = collar.check(3000.0, 0.9, annex(), &mut Working::off());
    assert!(two.each_n > one.each_n && one.needed >= two.needed);
    assert_eq!(one.needed, Some(1));
    assert!(one.fits, "{one:?}");
}

#[test]
fn bolts_take_their_holes_out_of_a_tie() {
    let bolt = Bolt::black(12.0, annex());
    let area = net_area_mm2(47.0, 147.0, 2, &bolt, annex());
    assert!((area - 47.0 * (147.0 - 26.0)).abs() < 1e-9);
    assert!((net_tension(5687.0, area, 10.0, &mut Working::off()).ratio - 0.1).abs() < 1e-9);
    assert!(net_area_mm2(47.0, 20.0, 2, &bolt, annex()).abs() < 1e-9);
}

#[test]
fn a_strut_bears_and_is_kept_from_sliding() {
    let class = wood("C16");
    let strut = bearing::EndBearing {
        wood: &class,
        area_mm2: 47.0 * 97.0,
        force_to_grain_deg: 90.0,
        force_to_normal_deg: 30.0,
        kc90: 1.0,
    };
    let asked = strut.check(5000.0, 591.0, 0.9, 1.3, annex(), &mut Working::off());
    assert!((asked.sliding_n - 2500.0).abs() < 1e-6);
    assert_eq!(asked.nails, Some(5));
    // Across the grain: 0.9 × 2.2 / 1.3 = 1.523 N/mm² on 4559 mm².
    assert!((asked.bearing.ratio - 5000.0 * 0.866_025_4 / (1.523_08 * 4559.0)).abs() < 1e-4);
    assert!((slip::k_ser(3.35, 370.0, 370.0, false, annex(), &mut Working::off()) - 623.9).abs() < 1.0);
}

#[test]
fn the_working_of_a_foot_says_where_every_figure_is_from() {
    let class = wood("C16");
    let mut w = Working::on();
    let kept = foot(&class, 97.0).check(1258.6, 0.9, annex(), &mut w);
    let quiet = foot(&class, 97.0).check(1258.6, 0.9, annex(), &mut Working::off());
    assert_eq!(kept, quiet);
    let lines = w.lines();
    assert!(lines.len() > 12, "{}", lines.len());
    for line in lines {
        assert!(!line.from.is_empty() && !line.how.is_empty() && line.value.is_finite(), "{line:?}");
        let text = format!("{} {} {}", line.what, line.how, line.from).to_lowercase();
        assert!(!text.contains("safe") && !text.contains("nan"), "{text}");
    }
}

#[test]
fn a_nail_too_short_counts_for_nothing_and_bolts_are_offered() {
    let class = wood("C16");
    let mut short = foot(&class, 147.0);
    short.nail = round(3.35, 50.0, 7.0);
    let answer = short.check(1258.6, 0.9, annex(), &mut Working::off());
    assert!(!answer.nailed.pointside_ok && answer.nailed.needed.is_none() && !answer.nailed.fits);
    assert!((answer.nailed.used.ratio - BEYOND).abs() < 1e-9);
    assert!((short.nail.least_length_mm(38.0, annex()) - 64.8).abs() < 1e-9);
    let bolted = answer.instead.iter().any(|other| matches!(other, Instead::Bolts { .. }));
    assert!(bolted, "{answer:?}");
}

#[test]
fn thick_nails_in_thin_or_dense_wood_want_holes() {
    let (soft, hard) = (wood("C16"), wood("D40"));
    let bore = |nail: Nail, timber: Part<'_>, easily| bore_first(&nail, &timber, easily, annex(), &mut Working::off());
    assert_eq!(bore(round(3.35, 75.0, 7.0), part(&soft, 38.0, 0.0), false), None);
    assert_eq!(bore(round(3.35, 75.0, 7.0), part(&soft, 38.0, 0.0), true), Some(BoreFirst::SplitsEasily));
    assert_eq!(bore(round(3.35, 75.0, 7.0), part(&soft, 22.0, 0.0), false), Some(BoreFirst::ThinTimber));
    assert_eq!(bore(round(3.35, 75.0, 7.0), part(&hard, 38.0, 0.0), false), Some(BoreFirst::DenseWood));
    assert_eq!(bore(round(8.0, 150.0, 16.0), part(&soft, 75.0, 0.0), false), Some(BoreFirst::ThickNail));
}

#[test]
fn between_a_thin_and_a_thick_plate_lies_between() {
    let class = wood("C24");
    let bolt = Bolt { washer_mm: 0.0, ..Bolt::black(12.0, annex()) };
    let at = |plate: f64| {
        let timber = part(&class, 47.0, 0.0);
        bolt.under_plate(plate, &timber, false, annex(), &mut Working::off()).capacity.characteristic_n
    };
    assert!(at(6.0) < at(8.0) && at(8.0) < at(12.0));
    assert!((at(9.0) - (at(6.0) + at(12.0)) / 2.0).abs() < 1e-6);
    assert!((at(1.0) - at(6.0)).abs() < 1e-9 && (at(30.0) - at(12.0)).abs() < 1e-9);
}

#[test]
fn connectors_and_skew_nails_are_not_worked_out() {
    let hanger = declared::connector("joist hanger", 2340.0, &mut Working::off());
    assert!(hanger.do_this.contains("2.34 kN"), "{}", hanger.do_this);
    let skew = declared::skew_nails(800.0, 2, &mut Working::off());
    assert!(skew.why.contains("not covered") && skew.do_this.contains("by practice"));
}

proptest! {
    #[test]
    fn thicker_nails_and_longer_points_are_never_weaker(
        d in 2.0..6.0f64, more in 1.0..1.5f64, t1 in 20.0..75.0f64, point in 30.0..90.0f64,
    ) {
        let class = wood("C16");
        let shear = |d: f64, point: f64| {
            let nail = round(d, t1 + point, 2.2 * d);
            nail.in_shear(&part(&class, t1, 0.0), &part(&class, 200.0, 0.0), annex(), &mut Working::off())
        };
        let (thin, thick) = (shear(d, point), shear(d * more, point));
        // The rope effect of a thicker nail may be less, because its point is fewer diameters deep; the rest never is.
        prop_assert!(thick.no_rope_n >= thin.no_rope_n * (1.0 - 1e-9), "{} {}", thin.no_rope_n, thick.no_rope_n);
        prop_assert!(shear(d, point * more).capacity.characteristic_n >= thin.capacity.characteristic_n * (1.0 - 1e-9));
        prop_assert!(thin.capacity.characteristic_n > 0.0);
        let least = thin.modes.all.iter().map(|m| m.1).fold(f64::INFINITY, f64::min);
        prop_assert!((least - thin.capacity.characteristic_n).abs() < 1e-9);
    }

    #[test]
    fn more_nails_in_a_row_are_never_weaker(n in 1u32..20, apart in 0.0..20.0f64) {
        let count = |n| in_a_row::nails(n, apart, false, false, annex(), &mut Working::off());
        prop_assert!(count(n + 1) >= count(n));
        prop_assert!(count(n) <= f64::from(n) + 1e-9);
        let bolts = |n| in_a_row::bolts(n, apart * 12.0, 12.0, 20.0, annex(), &mut Working::off());
        prop_assert!(bolts(n + 1) >= bolts(n) && bolts(n) <= f64::from(n) + 1e-9);
    }

    #[test]
    fn a_bigger_lap_never_takes_fewer(width in 60.0..300.0f64, height in 60.0..250.0f64, angle in 0.0..90.0f64) {
        let nail = round(3.35, 75.0, 7.0);
        let count = |width: f64, height: f64| {
            let lap = Lap::rectangle(width, height, 0.0, angle, true);
            let spacings = [0, 1].map(|t| Spacings::nail(&nail, 310.0, lap.angle_deg(t), annex()));
            lap.fit(&spacings, 200, &mut Working::off()).count()
        };
        prop_assert!(count(width + 40.0, height) >= count(width, height));
        prop_assert!(count(width, height + 40.0) >= count(width, height));
    }

    #[test]
    fn no_input_makes_a_panic(a in any::<f64>(), b in any::<f64>(), c in any::<f64>(), d in any::<f64>()) {
        let class = wood("C16");
        let nail = round(a, b, c);
        let shear = nail.in_shear(&part(&class, d, a), &part(&class, c, b), annex(), &mut Working::on());
        prop_assert!(shear.capacity.characteristic_n >= 0.0);
        let mut odd = foot(&class, c);
        (odd.pitch_deg, odd.seat_mm, odd.nail) = (a, b, round(3.35, d, 7.0));
        let outcome = odd.check(d, 0.9, annex(), &mut Working::on()).nailed;
        prop_assert!(outcome.used.ratio >= 0.0);
        let bolt = Bolt { diameter_mm: a, tensile_n_mm2: b, washer_mm: c };
        prop_assert!(bolt.double_shear(&part(&class, d, a), &part(&class, b, c), annex(), &mut Working::on()).capacity.characteristic_n >= 0.0);
    }
}
