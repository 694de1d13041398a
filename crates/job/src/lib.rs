//! The job file.

mod types;

pub use types::{
    Eaves, Fascia, HipEdge, HipHead, HipLine, HipTimber, Job, LengthUnit, RafterTimber, RidgeTimber, RidgeTop, Section,
    Spread, TailCut, Timber, Verge, Wall,
};
