//! Rafters and joists of one span. The statics are closed forms of this test; strengths, stresses and deflections are
//! those of the checks.

use super::reading::{design, lasting, line, rows, uk, working};
use geometry::Angle;
use strength::annex::timber::{Duration, ServiceClass};
use strength::eurocode::members::{
    Design, Finish, Forces, Section, Span, Variable, at_section, deflection_limit, movement, sag_of_point, sag_of_udl,
    shear,
};
use strength::working::Working;

/// A moment in kN·m alone.
fn bent(moment: f64) -> Forces {
    Forces { moment_y: moment * 1e6, ..Forces::default() }
}

/// Limits with a ceiling and without, mm.
fn limits(span: f64) -> [f64; 2] {
    [Finish::Ceiling, Finish::Open].map(|finish| deflection_limit(uk(), Span::Between(span), finish).0)
}

/// Final deflection when one load comes and goes, mm.
fn last(design: &Design<'_>, permanent: f64, variable: f64, psi2: f64) -> f64 {
    let variable = Variable { first: variable, psi0: 0.7, psi2 };
    movement(design, permanent, &[variable], &mut Working::off()).last
}

/// Worked out from the clauses as remembered: not independent.
#[test]
fn rafter_single_span() {
    for row in rows("rafter_single_span", 3) {
        let pitch = Angle::deg(row.input("pitch_deg"));
        let (sin, cos) = (pitch.sin(), pitch.cos());
        let (plan, spacing) = (row.input("plan_span_m"), row.input("spacing_m"));
        let (g, s) = (row.input("gk_slope") * spacing, row.input("s_plan") * spacing);
        let slope = plan / cos;
        let load = row.input("gammaG") * g / cos + row.input("gammaQ") * s;
        let (moment, end) = (load * plan * plan / 8.0, load * plan / 2.0);

        let section = Section::new(row.input("b_mm"), row.input("h_mm"));
        let shared = row.input("ksys") == uk().factors.ksys.factor.value;
        let design = Design { shared, ..design(row.word("cls"), ServiceClass::One, lasting(row.input("kmod"))) };
        assert_eq!((design.kdef(), uk().factors.kcr.value), (row.input("kdef"), row.input("kcr")));
        let (bending, bends) = working(|w| at_section(&design, section, bent(moment), w));
        let (shearing, shears) = working(|w| shear(&design, section, end * cos * 1000.0, w));
        let sag = |load: f64| sag_of_udl(design.wood, section, slope * 1000.0, load).bending;
        let (first_g, first_q) = (sag(g * cos), sag(s * cos * cos));
        let [ceiling, open] = limits(slope * 1000.0);
        row.compare(&[
            ("L_slope_m", slope),
            ("w_d_plan", load),
            ("M_d", moment),
            ("V_d", end * cos),
            ("N_end_d", end * sin),
            ("sigma_m", line(&bends, "σ_m,y,d")),
            ("f_m_d", line(&bends, "f_m,y,d")),
            ("util_bending", bending.ratio),
            ("tau", line(&shears, "τ_d")),
            ("f_v_d", line(&shears, "f_v,d")),
            ("util_shear", shearing.ratio),
            ("w_inst_g", first_g),
            ("w_inst_q", first_q),
            ("w_net_fin", last(&design, first_g, first_q, row.input("psi2"))),
            ("limit_L250", ceiling),
            ("limit_L150", open),
        ]);
    }
}

/// Reference value of a program for a book's inputs.
#[test]
fn joist_bending() {
    for row in rows("joist_bending", 1) {
        let (span, spacing) = (row.input("span_mm") / 1000.0, row.input("spacing_mm") / 1000.0);
        let load = spacing * (row.input("gammaG") * row.input("gk") + row.input("gammaQ") * row.input("qk"));
        let moment = load * span * span / 8.0;
        let section = Section::new(row.input("b_mm"), row.input("h_mm"));
        let design = Design { shared: true, ..design(row.word("cls"), ServiceClass::One, lasting(row.input("kmod"))) };
        assert_eq!(
            (design.ksys(), uk().factors.gamma_m.value),
            (row.input("ksys"), row.input("gamma_M")),
            "factors of the row"
        );
        let (bending, lines) = working(|w| at_section(&design, section, bent(moment), w));
        row.compare(&[
            ("M_kNm", moment),
            ("sigma", line(&lines, "σ_m,y,d")),
            ("f_m_d", line(&lines, "f_m,y,d")),
            ("utilisation", bending.ratio),
        ]);
    }
}

/// Reference values of a program for a book's inputs.
#[test]
fn joist_deflection() {
    for row in rows("joist_deflection", 2) {
        let wood = uk().class(row.word("cls")).expect("the class is there");
        assert_eq!((wood.e0_mean, wood.g_mean), (row.input("E"), row.input("G")));
        let section = Section::new(row.input("b_mm"), row.input("h_mm"));
        let sag = sag_of_udl(wood, section, row.input("span_mm"), row.input("q_kN_per_m"));
        row.compare(&[("w_mm", sag.total()), ("w_bending_mm", sag.bending), ("w_shear_mm", sag.shear)]);
    }
}

/// Worked out from the clauses as remembered: not independent. A man's weight (0.9 kN) is on one joist, a loft's spread
/// load (0.25 kN/m²) on all.
#[test]
fn ceiling_joist() {
    const PERSON: f64 = 0.9;
    const LOFT: f64 = 0.25;
    for row in rows("ceiling_joist", 2) {
        let (span, spacing) = (row.input("span_m"), row.input("spacing_m"));
        let (g, q) = (row.input("gk") * spacing, LOFT * spacing);
        let spread = |load: f64| load * span * span / 8.0;
        let udl = spread(1.35 * g + 1.5 * q);
        let point = spread(1.35 * g) + 1.5 * PERSON * span / 4.0;
        let section = Section::new(row.input("b_mm"), row.input("h_mm"));
        let used = |moment: f64, duration, shared| {
            let design = Design { shared, ..design(row.word("cls"), ServiceClass::One, duration) };
            at_section(&design, section, bent(moment), &mut Working::off()).ratio
        };
        let design = design(row.word("cls"), ServiceClass::One, Duration::Long);
        assert_eq!(design.kdef(), row.input("kdef"));
        let sag = |load: f64| sag_of_udl(design.wood, section, span * 1000.0, load).bending;
        let (first_g, first_q) = (sag(g), sag(q));
        row.compare(&[
            ("M_udl", udl),
            ("M_point", point),
            ("util_G", used(spread(1.35 * g), Duration::Permanent, true)),
            ("util_udl_long", used(udl, Duration::Long, true)),
            ("util_point_short", used(point, Duration::Short, true)),
            ("util_point_short_ksys1", used(point, Duration::Short, false)),
            ("w_inst_g", first_g),
            ("w_inst_udl", first_q),
            ("w_inst_Q", sag_of_point(design.wood, section, span * 1000.0, PERSON * 1000.0).bending),
            ("w_net_fin_udl", last(&design, first_g, first_q, row.input("psi2_loft"))),
            ("limit_L250", limits(span * 1000.0)[0]),
        ]);
    }
}

/// A printed verdict of an old table: these joists are suitable. The figures are ours.
#[test]
fn floor_joist_suitable() {
    for row in rows("floor_joist_suitable", 4) {
        assert_eq!(row.expected("published"), "suitable");
        let (span, spacing) = (row.input("clear_span_m"), row.input("spacing_m"));
        let load = spacing * (1.35 * row.input("gk") + 1.5 * row.input("qk"));
        let section = Section::new(row.input("b_mm"), row.input("h_mm"));
        let design = Design { shared: true, ..design(row.word("cls"), ServiceClass::One, Duration::Medium) };
        let bending = at_section(&design, section, bent(load * span * span / 8.0), &mut Working::off());
        assert!(bending.passes(), "{}", row.id);
        let sag = |load: f64| sag_of_udl(design.wood, section, span * 1000.0, load * spacing);
        let first = sag(row.input("gk") + row.input("qk"));
        let want = |name| row.expected(name).as_f64().expect("it is a number");
        assert!((bending.ratio - want("EC5_util_bending")).abs() <= 0.0005, "{}: {}", row.id, bending.ratio);
        assert!((first.bending - want("EC5_w_inst_mm")).abs() <= 0.05, "{}: {first:?}", row.id);
        let lasting = last(&design, sag(row.input("gk")).total(), sag(row.input("qk")).total(), 0.3);
        assert!(lasting <= limits(span * 1000.0)[0], "{}: {lasting}", row.id);
    }
}
