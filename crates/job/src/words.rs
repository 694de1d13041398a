//! The words a file uses for each choice.

use crate::{
    AccessKind, Covering, DormerKind, Fascia, Feet, Ground, HipEdge, HipHead, HipLine, LengthUnit, OpeningKind,
    OrderAim, Per, PurlinSet, RidgeAs, RidgeRun, RidgeTop, SpliceKind, Spread, StrengthClass, TailCut, TickState,
    ValleyAs, Wood,
};

/// A choice that is written as a word.
pub(crate) trait Choice: Copy + 'static {
    /// Every word with what it stands for.
    const WORDS: &'static [(&'static str, Self)];

    /// What a word stands for.
    fn from_word(word: &str) -> Option<Self> {
        Self::WORDS.iter().find(|(known, _)| *known == word).map(|(_, choice)| *choice)
    }
}

/// The words of a choice, in order.
pub(crate) fn words<T: Choice>() -> Vec<&'static str> {
    T::WORDS.iter().map(|(word, _)| *word).collect()
}

impl Choice for LengthUnit {
    const WORDS: &'static [(&'static str, Self)] = &[("mm", Self::Millimetres), ("feet-inches", Self::FeetInches)];
}

impl Choice for Fascia {
    const WORDS: &'static [(&'static str, Self)] = &[("level", Self::Level), ("fixed", Self::Fixed)];
}

impl Choice for TailCut {
    const WORDS: &'static [(&'static str, Self)] =
        &[("plumb", Self::Plumb), ("square", Self::Square), ("level", Self::Level)];
}

impl Choice for Spread {
    const WORDS: &'static [(&'static str, Self)] =
        &[("from-start", Self::FromStart), ("from-end", Self::FromEnd), ("equal", Self::Equal)];
}

impl Choice for HipEdge {
    const WORDS: &'static [(&'static str, Self)] = &[("backed", Self::Backed), ("dropped", Self::Dropped)];
}

impl Choice for HipLine {
    const WORDS: &'static [(&'static str, Self)] = &[("centred", Self::Centred), ("set-over", Self::SetOver)];
}

impl Choice for HipHead {
    const WORDS: &'static [(&'static str, Self)] = &[("crown", Self::Crown), ("ridge", Self::Ridge)];
}

impl Choice for RidgeRun {
    const WORDS: &'static [(&'static str, Self)] = &[("level", Self::Level), ("as-it-falls", Self::AsItFalls)];
}

impl Choice for RidgeTop {
    const WORDS: &'static [(&'static str, Self)] = &[("arrises", Self::Arrises), ("centre", Self::Centre)];
}

impl Choice for PurlinSet {
    const WORDS: &'static [(&'static str, Self)] = &[("square", Self::Square), ("plumb", Self::Plumb)];
}

impl Choice for SpliceKind {
    const WORDS: &'static [(&'static str, Self)] =
        &[("fish-plates", Self::FishPlates), ("splayed", Self::Splayed), ("hooked", Self::Hooked)];
}

impl Choice for Wood {
    const WORDS: &'static [(&'static str, Self)] = &[("softwood", Self::Softwood), ("hardwood", Self::Hardwood)];
}

impl Choice for OpeningKind {
    const WORDS: &'static [(&'static str, Self)] =
        &[("roof-window", Self::RoofWindow), ("chimney", Self::Chimney), ("hatch", Self::Hatch)];
}

impl Choice for DormerKind {
    const WORDS: &'static [(&'static str, Self)] = &[("gable", Self::Gable), ("lean-to", Self::LeanTo)];
}

impl Choice for ValleyAs {
    const WORDS: &'static [(&'static str, Self)] = &[("lay-board", Self::LayBoard), ("rafter", Self::Rafter)];
}

impl Choice for TickState {
    const WORDS: &'static [(&'static str, Self)] = &[("cut", Self::Cut), ("fixed", Self::Fixed)];
}

impl Choice for Covering {
    const WORDS: &'static [(&'static str, Self)] = &[
        ("plain-tile", Self::PlainTile),
        ("handmade-plain-tile", Self::HandmadePlainTile),
        ("interlocking-tile", Self::InterlockingTile),
        ("pantile", Self::Pantile),
        ("slate", Self::Slate),
        ("heavy-slate", Self::HeavySlate),
        ("fibre-cement-slate", Self::FibreCementSlate),
    ];
}

impl Choice for Feet {
    const WORDS: &'static [(&'static str, Self)] = &[("free", Self::Free), ("held", Self::Held)];
}

impl Choice for RidgeAs {
    const WORDS: &'static [(&'static str, Self)] = &[("board", Self::Board), ("beam", Self::Beam)];
}

impl Choice for AccessKind {
    const WORDS: &'static [(&'static str, Self)] =
        &[("scaffold", Self::Scaffold), ("tower", Self::Tower), ("edge-protection", Self::EdgeProtection)];
}

impl Choice for Ground {
    const WORDS: &'static [(&'static str, Self)] =
        &[("firm", Self::Firm), ("soft", Self::Soft), ("sloping", Self::Sloping)];
}

impl Choice for StrengthClass {
    const WORDS: &'static [(&'static str, Self)] = Self::ALL;
}

impl Choice for OrderAim {
    const WORDS: &'static [(&'static str, Self)] = &[("cost", Self::Cost), ("waste", Self::Waste)];
}

impl Choice for Per {
    const WORDS: &'static [(&'static str, Self)] = Self::ALL;
}
