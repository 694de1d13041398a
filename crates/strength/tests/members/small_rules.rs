//! Strengths, limits, and rules of the trade.

use super::reading::{design, line, named, rows, uk, working};
use strength::annex::timber::{Duration, ServiceClass, Timber};
use strength::eurocode::members::{
    Contact, Finish, Forces, Section, Span, Support, Variable, at_section, bearing, deflection, deflection_limit,
    hole_of_trade, movement, notch_of_trade,
};
use strength::working::Working;

fn bent() -> Forces {
    Forces { moment_y: 1e6, ..Forces::default() }
}

/// A printed figure, which carries a rounded `k_h`.
#[test]
fn bending_strength() {
    for row in rows("bending_strength", 1) {
        assert_eq!((row.input("service_class"), uk().factors.gamma_m.value), (2.0, row.input("gamma_M")));
        let design = design(row.word("cls"), ServiceClass::Two, named(row.word("load_duration")));
        let section = Section::new(row.input("b_mm"), row.input("h_mm"));
        let (_, lines) = working(|w| at_section(&design, section, bent(), w));
        row.compare(&[("f_m_d", line(&lines, "f_m,y,d"))]);
    }
}

/// Reference values of a program, no book named.
#[test]
fn design_strength() {
    for row in rows("design_strength", 2) {
        let words: Vec<&str> = row.word("what").split(' ').collect();
        let [strength, class, duration, service] = words[..] else { panic!("{words:?}") };
        let service = if service == "SC1" { ServiceClass::One } else { ServiceClass::Three };
        let design = design(class, service, named(duration));
        assert_eq!(design.kmod(), row.input("kmod"));
        let got = if strength == "f_m_d" {
            line(&working(|w| at_section(&design, Section::new(50.0, 200.0), bent(), w)).1, "f_m,y,d")
        } else {
            let gap = f64::INFINITY;
            let seat = Contact { breadth: 50.0, length: 50.0, beyond: [0.0; 2], gap, support: Support::Plain };
            line(&working(|w| bearing(&design, 100.0, &seat, 1.0, w)).1, "f_c,90,d")
        };
        row.compare(&[("f_d", got)]);
    }
}

/// A printed figure; the ratio of the row is put in the place of ours, which shows that another annex is another file.
#[test]
fn deflection_limits() {
    for row in rows("deflection_limit", 1) {
        let text = include_str!("../../../../regions/uk/timber.toml");
        let other = format!("[deflection.ceiling]\nvalue = {}", row.input("ratio"));
        let other = text.replacen("[deflection.ceiling]\nvalue = 250", &other, 1);
        let classes = include_str!("../../../../regions/uk/strength-classes.toml");
        let timber = Timber::read(&other, classes).expect("it is read");
        let span = Span::Between(row.input("span_mm"));
        row.compare(&[("limit_mm", deflection_limit(&timber, span, Finish::Ceiling).0)]);
    }
    let used = |span, finish| deflection(uk(), span, finish, -5.0, &mut Working::off()).ratio;
    let (between, overhang) = (Span::Between(1500.0), Span::Overhang(750.0));
    assert!((used(between, Finish::Ceiling) - 5.0 / 6.0).abs() < 1e-12);
    assert_eq!(used(between, Finish::Open), 0.5);
    assert_eq!(used(overhang, Finish::Open), 0.5);
    assert!((used(overhang, Finish::Ceiling) - 5.0 / 6.0).abs() < 1e-12);
}

/// `w_fin` by hand: G 2, Q1 3 (ψ0 0.5, ψ2 0), Q2 2 (ψ0 0.7, ψ2 0.3), creep 0.8. Q1 leads: 1.5 more against 0.6.
#[test]
fn loads_that_come_and_go_deflect_in_turn() {
    let design = design("C24", ServiceClass::Two, Duration::Short);
    let loads = [Variable { first: 3.0, psi0: 0.5, psi2: 0.0 }, Variable { first: 2.0, psi0: 0.7, psi2: 0.3 }];
    let found = movement(&design, 2.0, &loads, &mut Working::off());
    assert!((found.first - (2.0 + 3.0 + 1.4)).abs() < 1e-12);
    assert!((found.last - (2.0 * 1.8 + 3.0 + 2.0 * (0.7 + 0.3 * 0.8))).abs() < 1e-12);
    let swapped = movement(&design, 2.0, &[loads[1], loads[0]], &mut Working::off());
    assert!((swapped.last - found.last).abs() < 1e-12);
}

/// Published guidance, as excerpted.
#[test]
fn notch_rule() {
    for row in rows("notch_rule", 1) {
        let found = notch_of_trade(uk(), row.input("depth_mm"), row.input("span_mm"));
        row.compare(&[("max_notch_depth_mm", found.most)]);
        let zone = row.expected("notch_zone_mm");
        assert_eq!((zone[0].as_f64(), zone[1].as_f64()), (Some(found.from.round()), Some(found.to)));
        assert!((found.from - found.from.round()).abs() < 1e-9);
        assert!(found.allows(25.0, 500.0) && !found.allows(25.1, 500.0) && !found.allows(25.0, 270.0));
    }
}

/// From memory.
#[test]
fn hole_rule() {
    for row in rows("hole_rule", 1) {
        let found = hole_of_trade(uk(), row.input("depth_mm"), row.input("span_mm"));
        row.compare(&[("max_hole_mm", found.most)]);
        let zone = row.expected("zone_mm");
        assert_eq!((zone[0].as_f64(), zone[1].as_f64()), (Some(found.from), Some(found.to)));
        assert!(!found.allows(20.0, 900.0) && found.allows(20.0, 1600.0));
    }
}
