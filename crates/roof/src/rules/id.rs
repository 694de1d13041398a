//! The names of the rules.

use serde::Deserialize;

macro_rules! ids {
    ($($(#[$doc:meta])* $name:ident,)*) => {
        /// Every rule that the frame applies or quotes. In the files of `regions/`
        /// the names are written in kebab case.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Deserialize)]
        #[serde(rename_all = "kebab-case")]
        pub enum Id {
            $($(#[$doc])* $name,)*
        }

        impl Id {
            /// All of them, in the order of their numbers.
            pub const ALL: &'static [Self] = &[$(Self::$name,)*];
        }
    };
}

ids! {
    /// Deepest birdsmouth as a share of the rafter.
    BirdsmouthThird,
    /// The cautious form of it.
    BirdsmouthQuarter,
    /// Greatest centres of rafters.
    RafterSpacingMost,
    /// Usual centres of rafters.
    RafterSpacingUsual,
    /// Least bearing of a timber on wood.
    BearingOnWood,
    /// Where a rafter may be joined.
    RafterJoinedOverSupport,
    /// Least depth of hips and valleys.
    HipNotShallower,
    /// By how much hips and valleys are deeper than rafters.
    HipDeeper,
    /// Least depth of ridges.
    RidgeTakesPlumbCut,
    /// Least length of a piece of wall plate.
    PlateLength,
    /// How wall plates are joined.
    PlateHalfLapped,
    /// Length of a half lap in a run of plate.
    PlateLapLength,
    /// Greatest distance of holding-down straps.
    StrapDownSpacing,
    /// Section of a holding-down strap.
    StrapDownWidth,
    /// Where the lowest fixing of it is.
    StrapDownLowestFixing,
    /// Least length of it on the wall.
    StrapDownLength,
    /// Greatest distance of lateral straps.
    StrapLateralSpacing,
    /// The same in tall buildings.
    StrapLateralSpacingTall,
    /// How many rafters a lateral strap crosses.
    StrapLateralMembers,
    /// How far it turns down the wall.
    StrapLateralDownturn,
    /// Angle ties at hipped corners.
    AngleTie,
    /// Dragon ties under loaded hips.
    DragonTie,
    /// How rafters sit on plumb purlins.
    PurlinBirdsmouth,
    /// Where a purlin is scarfed.
    PurlinScarfNearStrut,
    /// Where a continuous beam bends least, as a share of the span.
    PurlinScarfFromSupport,
    /// Where a single purlin lies.
    PurlinHalfway,
    /// Greatest distance of purlins up the slope.
    PurlinSpacing,
    /// Distance of struts along a purlin.
    StrutSpacing,
    /// Flattest strut.
    StrutSlope,
    /// Above which share of the rise a collar is no tie.
    CollarHeight,
    /// How ceiling joists meet rafters.
    JoistLappedToRafter,
    /// From which span ceiling joists carry a binder.
    BinderFromSpan,
    /// How many cut rafters one added on each side makes up for.
    OpeningCutPerPair,
    /// Most rafters an opening may cut without an engineer.
    OpeningCutMost,
    /// Dormers that need an engineer.
    OpeningLargeDormer,
    /// By how much trimming rafters are thicker if not doubled.
    TrimmingRafterThicker,
    /// What cutting a rafter does to the one opposite.
    OpeningBreaksCouple,
    /// Distance of timber from the inside of a flue.
    ChimneyFromFlue,
    /// Distance of timber from the masonry round a flue.
    ChimneyFromFace,
    /// Fitting gap beside a roof window.
    RoofWindowGap,
    /// Least clear size of a loft hatch.
    HatchClear,
    /// Length of a scarf: softwood, no bolts.
    ScarfSoftwoodPlain,
    /// Length of a scarf: softwood, bolts.
    ScarfSoftwoodBolted,
    /// Length of a scarf: softwood, bolts and indents.
    ScarfSoftwoodIndented,
    /// Length of a scarf: hardwood, no bolts.
    ScarfHardwoodPlain,
    /// Length of a scarf: hardwood, bolts.
    ScarfHardwoodBolted,
    /// Length of a scarf: hardwood, bolts and indents.
    ScarfHardwoodIndented,
    /// Length in shear behind an indent: softwood.
    IndentShearSoftwood,
    /// Length in shear behind an indent: hardwood.
    IndentShearHardwood,
    /// How the faces of indents stand.
    IndentFacesSquare,
    /// Sum of the areas of bolts, as a share of the timber.
    BoltArea,
    /// Thickness of a wooden fish plate.
    FishPlateThickness,
    /// Length of a fished joint.
    FishPlateLength,
    /// Deepest indent, as a share of the thickness of the plate.
    FishPlateIndentDepth,
    /// Length of an indent under a fish plate.
    FishPlateIndentLength,
    /// What a fished joint is not for.
    FishPlatesNotForBending,
    /// Most bolt holes in one section.
    BoltsStaggered,
    /// Usual bolt.
    BoltDiameter,
    /// Bolt from an end it pulls towards.
    BoltLoadedEnd,
    /// The same in mm.
    BoltLoadedEndLeast,
    /// Bolt from an end it pulls away from.
    BoltUnloadedEnd,
    /// Bolt from an edge it pushes towards.
    BoltLoadedEdge,
    /// Bolt from any edge.
    BoltUnloadedEdge,
    /// Bolts apart along the grain.
    BoltSpacingAlong,
    /// Bolts apart across the grain.
    BoltSpacingAcross,
    /// Splices in neighbouring timbers.
    SplicesNotSideBySide,
    /// What a scarf without plates is worth.
    SpliceNotFullStrength,
}
