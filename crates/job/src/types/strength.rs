//! What a roof carries, and how strong its timber is.

use schemars::JsonSchema;

/// What a roof carries.
#[derive(Clone, Debug, PartialEq)]
pub struct Carried {
    /// What the slopes are covered with.
    pub covering: Covering,
    /// What the covering weighs on the slope if its maker declares it, kN/m².
    pub covering_weight: Option<f64>,
    /// Battens, underlay and boards on the slope, kN/m².
    pub under_covering: f64,
    /// Insulation and lining at the rafters, on the slope, kN/m².
    pub lining: f64,
    /// What the ceiling joists carry for good, kN/m².
    pub ceiling: f64,
    /// What is put in the loft, kN/m².
    pub loft: f64,
    /// Zone on the snow map.
    pub snow_zone: u32,
    /// Height above the sea, m.
    pub altitude: f64,
    /// Snow is kept from sliding off.
    pub snow_held: bool,
    /// Peak wind pressure at the ridge, kN/m².
    pub wind: f64,
    /// A water tank stands on the ceiling or in the roof.
    pub tank: bool,
    /// Panels or plant stand on the slopes.
    pub panels: bool,
}

/// How strong the timber is, and what holds it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Strong {
    /// Strength class of all timber.
    pub class: StrengthClass,
    /// All timber is new and graded.
    pub graded: bool,
    /// Service class, 1 to 3.
    pub service: u32,
    /// Whether walls hold the feet of rafters.
    pub feet: Feet,
    /// What the ridge is.
    pub ridge: RidgeAs,
}

/// What the slopes are covered with.
#[derive(Clone, Copy, Debug, PartialEq, Eq, JsonSchema)]
#[schemars(rename_all = "kebab-case")]
pub enum Covering {
    /// Plain tiles, clay or concrete.
    PlainTile,
    /// Plain tiles made by hand.
    HandmadePlainTile,
    /// Interlocking tiles.
    InterlockingTile,
    /// Pantiles and single-lap clay tiles.
    Pantile,
    /// Natural slates.
    Slate,
    /// Thick natural slates.
    HeavySlate,
    /// Fibre-cement slates.
    FibreCementSlate,
}

/// What the feet of rafters do under load.
#[derive(Clone, Copy, Debug, PartialEq, Eq, JsonSchema)]
#[schemars(rename_all = "kebab-case")]
pub enum Feet {
    /// They can move out.
    Free,
    /// The walls hold them.
    Held,
}

/// What a ridge does under load.
#[derive(Clone, Copy, Debug, PartialEq, Eq, JsonSchema)]
#[schemars(rename_all = "kebab-case")]
pub enum RidgeAs {
    /// Pairs of rafters lean on it.
    Board,
    /// It carries the heads of rafters.
    Beam,
}

macro_rules! classes {
    ($($class:ident),+) => {
        /// Strength class of solid timber, as stamped on it.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, JsonSchema)]
        pub enum StrengthClass {
            $(
                #[doc = concat!("Class ", stringify!($class), ".")]
                $class
            ),+
        }

        impl StrengthClass {
            /// Every class with its name, the weakest of each wood first.
            pub const ALL: &'static [(&'static str, Self)] = &[$((stringify!($class), Self::$class)),+];

            /// Its name, e.g. `C24`.
            #[must_use]
            pub const fn name(self) -> &'static str {
                match self {
                    $(Self::$class => stringify!($class)),+
                }
            }
        }
    };
}

classes!(C14, C16, C18, C20, C22, C24, C27, C30, C35, C40, C45, C50, D18, D24, D27, D30, D35, D40, D45, D50);
