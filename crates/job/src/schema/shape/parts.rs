//! The shape of what is fitted to the frame. Every part has a type of its own,
//! for the words of its keys are its own.

use super::Length;
use crate::{PurlinSet, SpliceKind, Wood};
use schemars::JsonSchema;

macro_rules! groups {
    ($($name:ident { $($key:ident: $value:ty),+ $(,)? })+) => {
        $(
            #[derive(JsonSchema)]
            #[schemars(deny_unknown_fields)]
            pub(in crate::schema) struct $name {
                $($key: $value),+
            }
        )+
    };
}

groups! {
    JointKeys { longest: Length, kind: SpliceKind, bolted: bool, wood: Wood }
    PurlinKeys { size: [Length; 2], set: PurlinSet, up: Vec<Length> }
    StrutKeys { size: [Length; 2], centres: Length }
    CollarKeys { size: [Length; 2], height: Length, every: u32 }
    CeilingJoistKeys { size: [Length; 2] }
    BinderKeys { size: [Length; 2] }
    HangerKeys { size: [Length; 2], centres: Length }
    AngleTieKeys { size: [Length; 2] }
    DragonTieKeys { size: [Length; 2] }
    LadderKeys { size: [Length; 2], centres: Length }
    NogginKeys { size: [Length; 2], rows: u32 }
    FasciaKeys { size: [Length; 2] }
    SoffitKeys { size: [Length; 2] }
    FilletKeys { size: [Length; 2] }
    BargeKeys { size: [Length; 2] }
    LayBoardKeys { size: [Length; 2] }
    BenchKeys { alike_within: Length }
}
