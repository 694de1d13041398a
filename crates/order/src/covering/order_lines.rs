//! The lines of the order, from what was counted.

use super::along::{self, Line};
use super::chosen::{Chosen, Product};
use super::count::Counted;
use super::figures::{Coverings, Way};
use super::out::{Battens, CoverLine, CoverUnit, Underlay, Vent};
use super::rows::Rows;
use super::slope::{EdgeKind, Slope};
use super::sums;

/// Everything that was counted.
pub struct Count<'a> {
    pub chosen: &'a Chosen,
    pub product: &'a Product<'a>,
    pub figures: &'a Coverings,
    pub slopes: &'a [Slope],
    pub rows: &'a [Rows],
    pub counted: &'a [Counted],
    pub lines: &'a [Line],
    pub breakage: f64,
    pub battens: Option<&'a Battens>,
    pub rafter_centres: f64,
    pub underlay: &'a Underlay,
    pub vents: &'a [Vent],
}

/// A tile or slate and a half beside a whole one.
const HALF_AS_WIDE_AGAIN: f64 = 1.5;

/// A line of pieces or metres that are ordered as counted.
fn plain(item: &str, what: &str, count: f64, unit: CoverUnit, from: &str) -> CoverLine {
    CoverLine {
        item: item.to_owned(),
        what: what.to_owned(),
        net: count,
        quantity: count,
        unit,
        kg: None,
        each_kg: None,
        from: from.to_owned(),
    }
}

impl Count<'_> {
    /// All lines that are of something.
    pub fn lines(&self) -> Vec<CoverLine> {
        let mut out = Vec::new();
        if self.product.way == Way::Sheet {
            self.sheets(&mut out);
        } else {
            self.pieces(&mut out);
        }
        self.ridges_and_hips(&mut out);
        self.valleys(&mut out);
        self.edges(&mut out);
        self.under(&mut out);
        self.fixings(&mut out);
        self.air(&mut out);
        out.retain(|line| line.quantity > 0.0);
        out
    }

    /// Weight of the pieces on the roof, kg, by what shows of them and the course under the eaves.
    pub fn pieces_kg(&self) -> Option<f64> {
        let area: f64 = self.counted.iter().map(|c| c.area).sum();
        if let Some(per_area) = self.product.weight_per_area {
            return Some(area / 1e6 * per_area);
        }
        let each = self.product.weight?;
        let laid = self.counted.iter().zip(self.rows);
        let shown: f64 = laid.map(|(c, r)| sums::pieces_in(c.area, self.product.cover_width, r.gauge)).sum();
        let under: f64 = match self.product.way {
            Way::Double | Way::Triple => self.slopes.iter().zip(self.rows).map(|(s, r)| self.under_eaves(s, r)).sum(),
            Way::Single | Way::Sheet => 0.0,
        };
        Some((shown + under) * each)
    }

    /// Whole pieces that weigh what the course under the eaves weighs.
    fn under_eaves(&self, slope: &Slope, rows: &Rows) -> f64 {
        let length = along::edges_on(slope, EdgeKind::Eaves) + along::edges_on(slope, EdgeKind::BreakFoot);
        let share = self.product.short(rows.lap) / self.product.length;
        length / self.product.cover_width * share
    }

    fn sum(&self, of: impl Fn(&Counted) -> u64) -> u64 {
        self.counted.iter().map(of).sum()
    }

    fn broken(&self, item: &str, what: &str, count: u64, from: &str) -> CoverLine {
        let quantity = sums::with_breakage(count, self.breakage) as f64;
        CoverLine { quantity, ..plain(item, what, count as f64, CoverUnit::Each, from) }
    }

    fn is_slate(&self) -> bool {
        self.product.name.contains("slate")
    }

    fn pieces(&self, out: &mut Vec<CoverLine>) {
        let p = self.product;
        let (full, short) = (self.sum(|c| c.whole + c.cut), self.sum(|c| c.short));
        let from = "whole and cut pieces of every course on the real slopes; what is cut off is waste";
        let mut main = if p.short_length.is_some() {
            self.broken(p.name, p.called, full, from)
        } else {
            let with_short = format!("{from}; {short} of them are cut short for eaves and top");
            self.broken(p.name, p.called, full + short, &with_short)
        };
        main.kg = self.pieces_kg();
        main.each_kg = p.weight;
        out.push(main);
        if let Some(length) = p.short_length {
            let from = "the course under the eaves course, and the top one";
            let eaves = self.broken("eaves-tile", "eaves and top tiles", short, from);
            out.push(CoverLine { each_kg: p.weight.map(|kg| kg * length / p.length), ..eaves });
        }
        let (item, what) = if self.is_slate() {
            ("slate-and-a-half", "slates and a half")
        } else {
            ("tile-and-a-half", "tiles and a half")
        };
        let wide = self.broken(item, what, self.sum(|c| c.wide), "every other course at each verge");
        out.push(CoverLine { each_kg: p.weight.map(|kg| kg * HALF_AS_WIDE_AGAIN), ..wide });
    }

    fn sheets(&self, out: &mut Vec<CoverLine>) {
        let p = self.product;
        for ((slope, rows), c) in self.slopes.iter().zip(self.rows).zip(self.counted) {
            let Some(row) = rows.rows.first() else { continue };
            let (count, length) = (c.whole + c.cut, row.head - row.tail);
            let what = format!("{}: {count} of {:.0} mm for the {}", p.called, length.ceil(), slope.place());
            let area = count as f64 * length * p.cover_width / 1e6;
            let line = CoverLine {
                net: c.area / 1e6,
                quantity: area,
                kg: p.weight_per_area.map(|w| w * c.area / 1e6),
                ..plain(
                    p.name,
                    &what,
                    area,
                    CoverUnit::M2,
                    "sheets of one length for the slope, by cover width and length",
                )
            };
            out.push(line);
        }
    }

    fn along(&self, kind: EdgeKind) -> impl Iterator<Item = &Line> {
        self.lines.iter().filter(move |line| line.kind == kind)
    }

    fn ridges_and_hips(&self, out: &mut Vec<CoverLine>) {
        let p = self.product;
        let pieces = |kind| self.along(kind).map(|l| sums::pieces_along(l.length, p.ridge_piece)).sum::<u64>();
        let weighed = |line: CoverLine| CoverLine { kg: Some(line.net * p.ridge_piece_weight), ..line };
        let from = format!("each line by {:.0} mm a piece, rounded up", p.ridge_piece);
        out.push(weighed(plain("ridge-piece", "ridge pieces", pieces(EdgeKind::Ridge) as f64, CoverUnit::Each, &from)));
        if self.chosen.bonnets && p.way != Way::Sheet {
            // Each course meets the hip from both sides, and a bonnet covers both.
            let bonnets = self.sum(|c| c.hip_courses).div_ceil(2);
            out.push(self.broken("bonnet", "bonnets", bonnets, "one a course on each hip"));
        } else {
            out.push(weighed(plain("hip-piece", "hip pieces", pieces(EdgeKind::Hip) as f64, CoverUnit::Each, &from)));
            let irons = self.along(EdgeKind::Hip).filter(|l| l.at_eaves).count();
            if p.way != Way::Sheet {
                out.push(plain("hip-iron", "hip irons", irons as f64, CoverUnit::Each, "one at the foot of each hip"));
            }
        }
    }

    fn valleys(&self, out: &mut Vec<CoverLine>) {
        if self.chosen.valley_pieces && self.product.way != Way::Sheet {
            let pieces = self.sum(|c| c.valley_courses).div_ceil(2);
            out.push(self.broken("valley-piece", "valley pieces", pieces, "one a course in each valley"));
            return;
        }
        let common = &self.figures.common;
        let (piece, lap) = (common.valley_length.value, common.valley_lap.value);
        let net: f64 = self.along(EdgeKind::Valley).map(|l| l.length).sum();
        let laps: f64 = self
            .along(EdgeKind::Valley)
            .map(|l| sums::pieces_along(l.length - lap, piece - lap).saturating_sub(1) as f64 * lap)
            .sum();
        let from =
            format!("length of the valleys to the edge of the eaves, with {lap:.0} mm laps of {piece:.0} mm lengths");
        let quantity = (net + laps) / 1000.0;
        out.push(CoverLine { quantity, ..plain("valley-lining", "valley lining", net / 1000.0, CoverUnit::M, &from) });
    }

    fn edges(&self, out: &mut Vec<CoverLine>) {
        let metres = |kinds: &[EdgeKind]| along::edges_of(self.slopes, kinds) / 1000.0;
        if self.product.undercloak {
            out.push(plain(
                "undercloak",
                "undercloak",
                metres(&[EdgeKind::Verge]),
                CoverUnit::M,
                "length of the verges",
            ));
        }
        let walls = metres(&[EdgeKind::TopWall, EdgeKind::SideWall]);
        out.push(plain("wall-flashing", "flashing at walls", walls, CoverUnit::M, "edges of slopes that end at walls"));
        let holes = self.slopes.iter().map(|s| s.holes.len()).sum::<usize>();
        let from = "one set for each roof window, stack and dormer";
        out.push(plain("opening-flashing", "sets of flashing", holes as f64, CoverUnit::Each, from));
    }

    fn under(&self, out: &mut Vec<CoverLine>) {
        let density = self.figures.common.batten_density.value;
        if let Some(b) = self.battens {
            let [thick, wide] = b.size_mm;
            let kg = b.metres * thick * wide / 1e6 * density;
            let what = format!("battens {thick:.0} x {wide:.0}");
            let from = "length of every course at its batten, without waste: joints lie on rafters";
            out.push(CoverLine { kg: Some(kg), ..plain("batten", &what, b.metres, CoverUnit::M, from) });
            // One at every rafter, and one at the end of each course.
            let ends = self.rows.iter().map(|r| r.rows.len()).sum::<usize>();
            let nails = sums::whole_up(b.metres * 1000.0 / self.rafter_centres + ends as f64);
            out.push(plain("batten-nail", "batten nails", nails as f64, CoverUnit::Each, "one at every rafter"));
        } else if let Some(rails) = self.product.rails {
            let metres: f64 = self.slopes.iter().map(|s| s.area()).sum::<f64>() / rails / 1000.0;
            let ends = (along::edges_of(self.slopes, &[EdgeKind::Eaves, EdgeKind::BreakFoot])) / 1000.0;
            let from = format!("one at the eaves, and every {rails:.0} mm up the slope");
            out.push(plain("rail", "rails under sheets", metres + ends, CoverUnit::M, &from));
        }
        let rule = &self.figures.underlay;
        let roll = rule.width.value * rule.length.value / 1e6;
        let from = format!(
            "{:.1} m2 with head laps of {:.0} mm, in rolls {:.1} x {:.0} m",
            self.underlay.area_m2,
            self.underlay.head_lap_mm,
            rule.width.value / 1000.0,
            rule.length.value / 1000.0
        );
        out.push(CoverLine {
            quantity: self.underlay.rolls as f64,
            kg: Some(self.underlay.area_m2 * rule.weight.value),
            ..plain("underlay", "underlay", self.underlay.area_m2 / roll, CoverUnit::Roll, &from)
        });
    }

    fn fixings(&self, out: &mut Vec<CoverLine>) {
        let p = self.product;
        let nails = sums::whole_up(self.sum(|c| c.nailed) as f64 * p.nails);
        let from = if p.nail_every > 1 {
            format!("every {}th course, and the edges", p.nail_every)
        } else {
            "every piece".to_owned()
        };
        out.push(self.broken("covering-nail", "nails or clips", nails, &from));
        if let Some(per_area) = p.fixings_per_area {
            let area = self.counted.iter().map(|c| c.area).sum::<f64>() / 1e6;
            let from = format!("{per_area:.0} for each m2");
            out.push(plain("sheet-screw", "screws", sums::whole_up(area * per_area) as f64, CoverUnit::Each, &from));
        }
    }

    fn air(&self, out: &mut Vec<CoverLine>) {
        for (item, what) in [
            ("eaves-vent", "ventilation at eaves"),
            ("ridge-vent", "ventilation at ridges"),
            ("top-vent", "ventilation at tops"),
        ] {
            let these = || self.vents.iter().filter(|v| v.item == item);
            let metres: f64 = these().map(|v| v.length_mm).sum::<f64>() / 1000.0;
            let area: f64 = these().map(|v| v.area_mm2).sum();
            out.push(plain(item, what, metres, CoverUnit::M, &format!("free area {area:.0} mm2 in all")));
        }
        let area: f64 = self.vents.iter().filter(|v| v.item == "roof-vent-area").map(|v| v.area_mm2).sum::<f64>() / 1e6;
        out.push(plain(
            "roof-vent-area",
            "free area of vents",
            area,
            CoverUnit::M2,
            "share of the floor under the roof",
        ));
    }
}
