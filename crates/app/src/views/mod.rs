//! What crosses between app and core: plain data, worded for people.

mod asks;
mod bench;
mod order;
mod scene;
mod site;
mod sketch;
mod standing;
mod strength;

pub use asks::{
    CardAsk, Dialect, Done, Edit, KeyGiven, LengthStyle, NewJob, Nudge, Settings, ShapeChoice, ShapeSize, SizeGiven,
    Tick, WallForm, WhyAsk,
};
pub use bench::{Card, CutRow, Figure, Step, Ways};
pub use order::{
    CoveredSlope, CuttingAsk, CuttingGroup, ItemPriceGiven, LaidRow, LayoutAsk, LayoutRow, LayoutView, Offcut,
    OffcutGiven, OrderBuy, OrderCovering, OrderLine, OrderNotice, OrderTimber, OrderView, SawStep, StockPrice,
    StockPriceGiven, YardAsk, YardRow,
};
pub use scene::{Run, Scene, SceneMember, SceneSlope};
pub use site::{
    RecordGiven, SiteAccess, SiteAsk, SiteBar, SiteBay, SiteField, SiteFigure, SiteForm, SiteHire, SiteHold, SiteLift,
    SiteLifts, SitePaper, SitePhase, SitePictureAsk, SiteProgramme, SiteRecords, SiteRow, SiteSection, SiteStep,
    SiteSteps, SiteStrap, SiteTimbers, SiteVerdict, SiteWall,
};
pub use sketch::{
    Corner, Diagonal, ReadingLine, Sketch, SketchAsk, SketchPart, SketchStep, SketchView, SketchWall, Snap, Touched,
};
pub use standing::{Entry, MemberRow, NoticeRow, Overview, PieceRow, RidgeRow, Standing, Tally, WallRow};
pub use strength::{
    StrengthChecked, StrengthField, StrengthForm, StrengthJoint, StrengthLine, StrengthMatter, StrengthOf, StrengthRow,
    StrengthStep, StrengthVerdict, StrengthView, StrengthWhy, StrengthWorking,
};
