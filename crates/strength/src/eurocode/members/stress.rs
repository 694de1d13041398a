//! Bending and axial force at one place along a member (6.1.2, 6.1.4, 6.1.6, 6.2.3, 6.2.4).

use super::say::say;
use super::{Design, Section, Use, greater};
use crate::working::Working;

/// What acts at one place along a member.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Forces {
    /// Along the grain, N: tension positive, compression negative.
    pub axial: f64,
    /// Bending up and down, N·mm; the sign does not matter.
    pub moment_y: f64,
    /// Bending sideways, N·mm; the sign does not matter.
    pub moment_z: f64,
}

/// Shares of bending strength about both axes.
#[derive(Clone, Copy, Debug)]
pub(super) struct Bent {
    /// `σ_m,y,d / f_m,y,d`.
    pub y: f64,
    /// `σ_m,z,d / f_m,z,d`.
    pub z: f64,
}

impl Bent {
    /// For moments on `section`, whose timber has the size `whole`.
    pub fn of(design: &Design<'_>, section: Section, whole: Section, forces: Forces, working: &mut Working) -> Self {
        let about = |what: [&str; 2], moment: f64, modulus: f64, depth: f64, working: &mut Working| {
            if moment == 0.0 {
                return 0.0;
            }
            let moment = moment.abs();
            let stress = working
                .line(what[0], moment / modulus, "N/mm²", "M / W", || format!("{} / {}", say(moment), say(modulus)));
            stress / design.bending(what[1], depth, working)
        };
        let y = ["bending stress σ_m,y,d", "bending strength f_m,y,d"];
        let z = ["sideways bending stress σ_m,z,d", "sideways bending strength f_m,z,d"];
        Self {
            y: about(y, forces.moment_y, section.w_y(), whole.depth, working),
            z: about(z, forces.moment_z, section.w_z(), whole.breadth, working),
        }
    }

    /// The worse corner: the stress about one axis in full, that about the other by `k_m`.
    pub fn together(self, km: f64) -> f64 {
        greater(self.y_full(km), self.z_full(km))
    }

    /// `y + k_m z`.
    pub fn y_full(self, km: f64) -> f64 {
        self.y + km * self.z
    }

    /// `k_m y + z`.
    pub fn z_full(self, km: f64) -> f64 {
        km * self.y + self.z
    }

    /// Whether anything bends.
    fn any(self) -> bool {
        self.y != 0.0 || self.z != 0.0
    }
}

/// Bending, tension and compression, alone or together, at one place of a member that does not buckle there:
/// (6.1), (6.2), (6.11)–(6.12), (6.17)–(6.18) or (6.19)–(6.20), whichever the forces call for.
#[must_use]
pub fn at_section(design: &Design<'_>, section: Section, forces: Forces, working: &mut Working) -> Use {
    check(design, section, section, forces, working)
}

/// The same where a birdsmouth or notch leaves `left` mm of the depth. The strength is that of the whole depth, and
/// the axial force is off the middle of what is left by half of what is cut away, which is taken to add to the bending.
#[must_use]
pub fn at_notch(design: &Design<'_>, section: Section, left: f64, forces: Forces, working: &mut Working) -> Use {
    let net = section.left(left);
    working.line("depth left h_ef", net.depth, "mm", "cut", || format!("of {}", say(section.depth)));
    let off = (section.depth - net.depth) / 2.0;
    let moment = forces.moment_y.abs() + forces.axial.abs() * off;
    if forces.axial != 0.0 {
        working.line("moment with the force off the middle", moment, "N·mm", "statics", || {
            format!("{} + {} × {}", say(forces.moment_y.abs()), say(forces.axial.abs()), say(off))
        });
    }
    check(design, net, section, Forces { moment_y: moment, ..forces }, working)
}

fn check(design: &Design<'_>, section: Section, whole: Section, forces: Forces, working: &mut Working) -> Use {
    design.basics(working);
    let bent = Bent::of(design, section, whole, forces, working);
    let km = design.timber.factors.km.value;
    let bending = bent.together(km);
    if forces.axial == 0.0 {
        let clause = "EN 1995-1-1 6.1.6 (6.11), (6.12)";
        let ratio = working.line("bending", bending, "", clause, || corners(bent, km));
        return Use::of(ratio, clause, "bending");
    }
    let stress = forces.axial.abs() / section.area();
    let how = || format!("{} / {}", say(forces.axial.abs()), say(section.area()));
    if forces.axial > 0.0 {
        working.line("tension stress σ_t,0,d", stress, "N/mm²", "N / A", how);
        let share = stress / design.tension(greater(whole.breadth, whole.depth), working);
        let (clause, name) = if bent.any() {
            ("EN 1995-1-1 6.2.3 (6.17), (6.18)", "bending with tension")
        } else {
            ("EN 1995-1-1 6.1.2 (6.1)", "tension")
        };
        let how = || format!("{} + {}", say(share), corners(bent, km));
        return Use::of(working.line(name, share + bending, "", clause, how), clause, name);
    }
    working.line("compression stress σ_c,0,d", stress, "N/mm²", "N / A", how);
    let share = stress / design.compression(working);
    if bent.any() || bending.is_nan() {
        let (clause, name) = ("EN 1995-1-1 6.2.4 (6.19), (6.20)", "bending with compression");
        let how = || format!("{}² + {}", say(share), corners(bent, km));
        return Use::of(working.line(name, share * share + bending, "", clause, how), clause, name);
    }
    let (clause, name) = ("EN 1995-1-1 6.1.4 (6.2)", "compression");
    Use::of(working.line(name, share, "", clause, || say(share)), clause, name)
}

/// Both corners with their numbers.
fn corners(bent: Bent, km: f64) -> String {
    if bent.z == 0.0 {
        return say(bent.y);
    }
    let (y, z, km) = (say(bent.y), say(bent.z), say(km));
    format!("the greater of {y} + {km} × {z} and {km} × {y} + {z}")
}
