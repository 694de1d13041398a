//! Joints that the code gives no sum for: what is asked is said, and who must answer.

use super::Use;
use crate::working::Working;
use serde::Serialize;

/// A joint whose capacity is not worked out here.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct NotWorkedOut {
    /// What it must carry, N.
    pub load_n: f64,
    /// Why no capacity is given.
    pub why: &'static str,
    /// What to do.
    pub do_this: String,
}

/// A joist hanger, framing anchor or other bought connector that carries `load_n` (design value).
pub fn connector(what: &str, load_n: f64, w: &mut Working) -> NotWorkedOut {
    w.line("load on the connector", load_n, "N", "EN 14250, EN 14545", || {
        "reaction of the timber that it carries".into()
    });
    NotWorkedOut {
        load_n,
        why: "its strength is what the maker declares",
        do_this: format!(
            "choose a {what} with a declared design strength of at least {:.2} kN, nailed as the maker says: every hole",
            load_n / 1000.0
        ),
    }
}

/// Nails at the head or foot of a jack, hip or valley rafter, driven on the skew or into end grain. `load_n` is what the
/// end of the timber brings down. The figures here have no model for skew nails, and nails in end grain carry nothing.
pub fn skew_nails(load_n: f64, by_practice: u32, w: &mut Working) -> NotWorkedOut {
    w.line("load at the skew nails", load_n, "N", "EN 1995-1-1 8.3.1.2(4)", || {
        "end grain carries no lateral load".into()
    });
    NotWorkedOut {
        load_n,
        why: "skew nails and nails in end grain are not covered",
        do_this: format!(
            "{by_practice} nails a side by practice, or a bearing under the end (ledger, hanger) for {:.2} kN",
            load_n / 1000.0
        ),
    }
}

/// A splice that is scarfed but has no plates: a hinge. It carries no moment at all, shear only by bearing.
pub fn bare_scarf(moment_nmm: f64, w: &mut Working) -> Use {
    w.line("moment at the scarf", moment_nmm, "N mm", "statics", || "a scarf without plates is a hinge".into());
    Use::of(moment_nmm, 0.0, "statics", "moment in a scarf without plates")
}
