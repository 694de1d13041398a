//! Seats, notches, and pressure at an angle to the grain.

use super::reading::{design, lasting, line, rows, uk, working};
use geometry::Angle;
use strength::annex::timber::{Duration, ServiceClass};
use strength::eurocode::members::{
    Contact, Forces, Notch, NotchFace, Section, Support, at_notch, at_section, bearing, bearing_at_angle, notch_factor,
    shear, shear_at_notch,
};
use strength::working::Working;

/// Worked out from the clauses as remembered: not independent.
#[test]
fn bearing_perp() {
    for row in rows("bearing_perp", 1) {
        let design = design(row.word("cls"), ServiceClass::Two, lasting(row.input("kmod")));
        assert_eq!(uk().factors.kc90.discrete.value, row.input("kc90"));
        // 30 mm are added on one side only: the timber ends at the other.
        let contact = Contact {
            breadth: row.input("b_mm"),
            length: row.input("l_mm"),
            beyond: [0.0, 1000.0],
            gap: f64::INFINITY,
            support: Support::Discrete,
        };
        let (used, lines) = working(|w| bearing(&design, 150.0, &contact, 1000.0, w));
        row.compare(&[("l_ef_mm", line(&lines, "effective contact length")), ("F_c90_Rd_kN", 1.0 / used.ratio)]);
    }
}

/// Each side adds the least of 30 mm, the wood that is there, the contact's length and half the way to the next force.
#[test]
fn wood_beside_a_contact_helps_so_far() {
    let contact = |length, beyond, gap| Contact { breadth: 47.0, length, beyond, gap, support: Support::Discrete };
    let design = design("C16", ServiceClass::Two, Duration::Short);
    for (contact, length) in [
        (contact(60.0, [0.0, 0.0], 5000.0), 60.0),
        (contact(60.0, [12.0, 500.0], 5000.0), 102.0),
        (contact(20.0, [500.0, 500.0], 5000.0), 60.0),
        (contact(60.0, [500.0, 500.0], 40.0), 100.0),
    ] {
        let (_, lines) = working(|w| bearing(&design, 100.0, &contact, 1000.0, w));
        assert_eq!(line(&lines, "effective contact length"), length, "{contact:?}");
    }
    // More than k_c,90 = 1 needs softwood and room: 200 mm for a timber 100 mm deep.
    let factor = |gap, class| {
        let design = super::reading::design(class, ServiceClass::Two, Duration::Short);
        let contact = contact(60.0, [0.0, 0.0], gap);
        line(&working(|w| bearing(&design, 100.0, &contact, 1000.0, w)).1, "k_c,90")
    };
    assert_eq!([factor(200.0, "C16"), factor(199.0, "C16"), factor(200.0, "D30")], [1.5, 1.0, 1.0]);
}

/// Worked out from the clauses as remembered: not independent.
#[test]
fn compression_at_angle() {
    for row in rows("compression_at_angle", 2) {
        let design = design(row.word("cls"), ServiceClass::Two, lasting(row.input("kmod")));
        assert_eq!(uk().factors.kc90.plain.value, row.input("kc90"));
        let angle = Angle::deg(row.input("alpha"));
        let (used, lines) = working(|w| bearing_at_angle(&design, angle, 1000.0, 2000.0, w));
        row.compare(&[("f_c_alpha_d", line(&lines, "f_c,α,d"))]);
        assert!((used.ratio * line(&lines, "f_c,α,d") - 2.0).abs() < 1e-12);
    }
}

/// A printed figure.
#[test]
fn notch_kv() {
    for row in rows("notch_kv", 1) {
        assert_eq!(uk().factors.kn.value, row.input("kn"));
        let notch = Notch {
            left: row.input("h_ef_mm"),
            reach: row.input("x_mm"),
            taper: row.input("taper_i"),
            face: NotchFace::Support,
        };
        row.compare(&[("k_v", notch_factor(uk(), row.input("h_mm"), &notch, &mut Working::off()))]);
    }
}

/// Worked out from the clauses as remembered: not independent.
#[test]
fn birdsmouth_notch() {
    for row in rows("birdsmouth_notch", 2) {
        let design = design(row.word("cls"), ServiceClass::Two, lasting(row.input("kmod")));
        assert_eq!(uk().factors.kcr.value, row.input("kcr"));
        let section = Section::new(row.input("b_mm"), row.input("h_mm"));
        let notch =
            Notch { left: row.input("h_ef_mm"), reach: row.input("x_mm"), taper: 0.0, face: NotchFace::Support };
        let (used, lines) = working(|w| shear_at_notch(&design, section, &notch, 1000.0, w));
        row.compare(&[("k_v", line(&lines, "k_v")), ("V_Rd_kN", 1.0 / used.ratio)]);
    }
}

/// A notch that cuts nothing is no notch; one in the edge away from the support only takes its wood.
#[test]
fn notches_at_their_limits() {
    let design = design("C24", ServiceClass::Two, Duration::Short);
    let section = Section::new(47.0, 150.0);
    let used = |left, reach, face| {
        let notch = Notch { left, reach, taper: 0.0, face };
        shear_at_notch(&design, section, &notch, 2000.0, &mut Working::off()).ratio
    };
    let whole = shear(&design, section, 2000.0, &mut Working::off()).ratio;
    assert_eq!(used(150.0, 40.0, NotchFace::Support), whole);
    assert!((used(100.0, 40.0, NotchFace::Opposite) / whole - 1.5).abs() < 1e-12);
    assert!(used(100.0, 40.0, NotchFace::Support) > used(100.0, 40.0, NotchFace::Opposite));
    assert!(used(100.0, 60.0, NotchFace::Support) > used(100.0, 40.0, NotchFace::Support));
    let gentle = Notch { left: 100.0, reach: 40.0, taper: 3.0, face: NotchFace::Support };
    let gentle = shear_at_notch(&design, section, &gentle, 2000.0, &mut Working::off()).ratio;
    assert!(gentle < used(100.0, 40.0, NotchFace::Support));
}

/// Bending where a birdsmouth leaves two thirds of the depth: (3/2)² of the whole timber's, the strength unchanged.
#[test]
fn bending_at_a_birdsmouth() {
    let design = design("C16", ServiceClass::Two, Duration::Short);
    let (section, forces) = (Section::new(47.0, 150.0), Forces { moment_y: 3e5, ..Forces::default() });
    let whole = at_section(&design, section, forces, &mut Working::off()).ratio;
    let net = at_notch(&design, section, 100.0, forces, &mut Working::off()).ratio;
    assert!((net / whole - 2.25).abs() < 1e-12);
    assert_eq!(at_notch(&design, section, 200.0, forces, &mut Working::off()).ratio, whole);
    // A force along the rafter is 25 mm off the middle of what is left.
    let pressed = Forces { axial: -1000.0, ..forces };
    let (_, lines) = working(|w| at_notch(&design, section, 100.0, pressed, w));
    assert_eq!(line(&lines, "moment with the force off the middle"), 3e5 + 25.0 * 1000.0);
}
