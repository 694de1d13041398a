//! Figures for joints: `regions/<region>/joints.toml`.

mod spacing;

pub use spacing::{Distance, Distances, Spacing};

use super::Figure;
use serde::Deserialize;
use std::sync::OnceLock;

/// The joints of the United Kingdom.
const UK: &str = include_str!("../../../../regions/uk/joints.toml");

/// Why a region has no figures for joints.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum JointsError {
    /// There is no such file.
    #[error("no figures for joints are kept for region `{region}`: write regions/{region}/joints.toml, or set `uk`")]
    NoSuchRegion {
        /// As the job names it.
        region: String,
    },
    /// The file is there but does not say what it must.
    #[error("regions/{region}/joints.toml: {fault}")]
    Unread {
        /// As the job names it.
        region: String,
        /// Line and reason.
        fault: String,
    },
}

/// Declares a group of figures, each a field.
macro_rules! figures {
    ($(#[$about:meta])* $name:ident { $($(#[$doc:meta])* $field:ident),+ $(,)? }) => {
        $(#[$about])*
        #[derive(Clone, Debug, PartialEq, Deserialize)]
        #[serde(deny_unknown_fields)]
        pub struct $name {
            $($(#[$doc])* pub $field: Figure,)+
        }

        impl $name {
            /// Its figures with their names, in the order of the file.
            #[must_use]
            pub fn all(&self) -> Vec<(&'static str, &Figure)> {
                vec![$((stringify!($field), &self.$field)),+]
            }
        }
    };
}

figures! {
    /// Partial factors.
    Partial {
        /// Of a joint, `γ_M`.
        connection,
        /// Of anything in an accidental situation.
        accidental,
        /// Of steel that yields, `γ_M0`.
        steel_yield,
        /// Of steel that breaks at holes, `γ_M2`.
        steel_tension,
    }
}

figures! {
    /// Embedment strength, N/mm² with d in mm and density in kg/m³.
    Embedment {
        /// Of the density.
        factor,
        /// Power of d, nails without holes.
        nail_power,
        /// Loss per mm of d, bored holes and bolts.
        bored_loss_per_mm,
        /// Thickest nail of these formulas; thicker ones count as bolts.
        nail_thickest_mm,
        /// `k_90` of softwood at d = 0.
        across_softwood,
        /// `k_90` of hardwood at d = 0.
        across_hardwood,
        /// More of `k_90` per mm of d.
        across_per_mm,
    }
}

figures! {
    /// Yield moment `factor · f_u · d^power`, N·mm.
    Yielding {
        /// Factor of round nails and bolts.
        round,
        /// Factor of square nails.
        square,
        /// Power of d.
        power,
    }
}

figures! {
    /// Axial strength of nails.
    Withdrawal {
        /// Of the shank, times density squared, N/mm².
        shank,
        /// Under the head, times density squared, N/mm².
        head,
        /// Depth of point from which a smooth nail has its full strength, times d.
        full_smooth_d,
        /// Depth at which it has none, times d.
        least_smooth_d,
        /// As `full_smooth_d`, ringed nails.
        full_ring_d,
        /// As `least_smooth_d`, ringed nails.
        least_ring_d,
    }
}

figures! {
    /// Rope effect.
    Rope {
        /// Share of the axial capacity that adds to the lateral one.
        share,
        /// Cap as a share of the rest, smooth round nails.
        cap_round,
        /// Square nails.
        cap_square,
        /// Ringed nails.
        cap_ring,
        /// Bolts.
        cap_bolt,
    }
}

figures! {
    /// Nailing.
    Nails {
        /// Least depth of the point, smooth nails, times d.
        pointside_smooth_d,
        /// Least depth of the point, ringed nails, times d.
        pointside_ring_d,
        /// Least number in a joint.
        least_in_joint,
        /// Density from which holes are bored, kg/m³.
        bored_from_density,
        /// Diameter beyond which holes are bored, mm.
        bored_from_mm,
        /// Thinnest timber without holes, times d.
        thin_d,
        /// `(slope · d − less) · density / thin_density`: the slope.
        thin_slope,
        /// What is taken off, mm.
        thin_less_mm,
        /// The density that the rule is scaled by, kg/m³.
        thin_density,
        /// How many times thicker wood that splits easily must be.
        splitting_thickness,
        /// 1: softwood counts as splitting easily; 0: it does not.
        softwood_splits_easily,
        /// Diameter from which the column of thick nails applies, mm.
        thick_from_mm,
        /// Density beyond which the columns of dense wood apply, kg/m³.
        dense_from,
    }
}

figures! {
    /// Bolts and their washers.
    Bolts {
        /// Bearing under a washer as a multiple of `f_c,90,k`.
        washer_bearing,
        /// Stress area as a share of the shank's.
        stress_area,
        /// Share of the tensile strength that counts.
        tension,
        /// Hole wider than the bolt by, mm.
        hole_clearance_mm,
        /// Tensile strength of grade 4.6, N/mm².
        tensile_4_6,
    }
}

figures! {
    /// Several fasteners in a row along the grain.
    InARow {
        /// Distance apart at which every nail counts, times d.
        nail_far_d,
        /// The next row of the table, times d.
        nail_middle_d,
        /// The next, times d.
        nail_near_d,
        /// The last, for bored holes only, times d.
        nail_bored_d,
        /// `k_ef` at `nail_far_d`.
        nail_far,
        /// `k_ef` at `nail_middle_d`.
        nail_middle,
        /// `k_ef` at `nail_near_d`.
        nail_near,
        /// `k_ef` at `nail_bored_d`.
        nail_bored,
        /// Bolts: power of their number.
        bolt_power,
        /// Bolts: power of their distance.
        bolt_root,
        /// Bolts: distance that counts as 1, times d.
        bolt_far_d,
    }
}

figures! {
    /// Steel plates on timber.
    SteelPlate {
        /// A plate up to this thickness is thin, times d.
        thin_d,
        /// A plate from this thickness on is thick, times d.
        thick_d,
        /// Spacings of nails as a share of those in timber.
        spacing,
    }
}

figures! {
    /// Splitting by a force across the grain.
    Splitting {
        /// Factor, N/mm^1.5.
        factor,
    }
}

figures! {
    /// Slip of a joint.
    Slip {
        /// Power of the mean density.
        density_power,
        /// Divisor, nails without holes.
        nail_divisor,
        /// Power of d, nails without holes.
        nail_power,
        /// Divisor, bolts and bored nails.
        bored_divisor,
        /// Stiffness at failure as a share of that in service.
        ultimate,
    }
}

figures! {
    /// A holding-down strap.
    Strap {
        /// Width, mm.
        width_mm,
        /// Thickness, mm.
        thickness_mm,
        /// Hole, mm.
        hole_mm,
        /// Yield strength, N/mm².
        yield_n_mm2,
        /// Tensile strength, N/mm².
        tensile_n_mm2,
        /// Share of the tensile strength that counts at a hole.
        net_share,
        /// Furthest apart, mm.
        furthest_mm,
    }
}

/// Sizes that are tried one after the other.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Sizes {
    /// mm, smallest first.
    pub values: Vec<f64>,
    /// Where they are from.
    pub source: String,
    /// How they were come by.
    pub standing: super::Standing,
}

/// What is tried when nails do not fit.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Tried {
    /// Depths of joists.
    pub joist_depths_mm: Sizes,
    /// Diameters of bolts.
    pub bolts_mm: Sizes,
}

/// All figures for joints of a region.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Joints {
    /// Which codes the file follows.
    pub edition: String,
    /// Partial factors.
    pub partial: Partial,
    /// Embedment.
    pub embedment: Embedment,
    /// Yield moment.
    pub yielding: Yielding,
    /// Axial strength of nails.
    pub withdrawal: Withdrawal,
    /// Rope effect.
    pub rope: Rope,
    /// Nailing.
    pub nails: Nails,
    /// Bolting.
    pub bolts: Bolts,
    /// Several in a row.
    pub in_a_row: InARow,
    /// Steel plates.
    pub steel_plate: SteelPlate,
    /// Splitting.
    pub splitting: Splitting,
    /// Slip.
    pub slip: Slip,
    /// Holding-down straps.
    pub strap: Strap,
    /// What is tried when nails do not fit.
    pub tried: Tried,
    /// Distances.
    pub spacing: Spacing,
}

impl Joints {
    /// Figures from the text of a file of region `region`.
    ///
    /// # Errors
    /// [`JointsError::Unread`] when a figure is missing, unknown or no number.
    pub fn read(region: &str, text: &str) -> Result<Self, JointsError> {
        toml::from_str(text)
            .map_err(|fault| JointsError::Unread { region: region.to_owned(), fault: fault.to_string() })
    }

    /// The figures of a region, as [`job::Job::region`] names it.
    ///
    /// # Errors
    /// [`JointsError::NoSuchRegion`] for a region without figures of its own: a code of another country is not guessed.
    pub fn of(region: &str) -> Result<&'static Self, JointsError> {
        static OF_UK: OnceLock<Result<Joints, JointsError>> = OnceLock::new();
        match region {
            "uk" => OF_UK.get_or_init(|| Self::read("uk", UK)).as_ref().map_err(Clone::clone),
            _ => Err(JointsError::NoSuchRegion { region: region.to_owned() }),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{Joints, JointsError, UK};

    #[test]
    fn the_file_is_read_and_every_figure_says_where_it_is_from() {
        let joints = Joints::of("uk").expect("the file is read");
        let groups = [joints.partial.all(), joints.embedment.all(), joints.nails.all(), joints.strap.all()];
        for (name, figure) in groups.into_iter().flatten() {
            assert!(figure.value.is_finite() && !figure.source.is_empty(), "{name}");
        }
    }

    #[test]
    fn another_edition_is_another_file() {
        let other = UK.replacen("connection = { value = 1.3", "connection = { value = 1.25", 1);
        let read = Joints::read("uk", &other).expect("the file is read");
        assert!((read.partial.connection.value - 1.25).abs() < f64::EPSILON);
        let missing = UK.replacen("connection =", "conection =", 1);
        assert!(
            matches!(Joints::read("uk", &missing), Err(JointsError::Unread { fault, .. }) if fault.contains("conection"))
        );
    }

    #[test]
    fn a_region_without_figures_is_not_guessed() {
        let fault = Joints::of("us").expect_err("there is no such file").to_string();
        assert!(fault.contains("regions/us/joints.toml"), "{fault}");
    }
}
