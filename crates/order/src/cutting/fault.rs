//! Why a cutting problem cannot be planned.

/// What is wrong with a cutting problem, and what to do about it.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum CuttingFault {
    /// There is no stock to cut from.
    #[error(
        "there is no stock of this section to cut from: give the lengths that can be bought, or what is in the yard"
    )]
    NoStock,
    /// A piece fits no length.
    #[error(
        "{} needs {length:.0} mm and the longest length it can be cut from gives {longest:.0} mm: splice it \
         ([timber.joint] longest = {longest:.0}), or give a longer length of stock", .marks.join(", ")
    )]
    PieceTooLong {
        /// Marks of the timbers.
        marks: Vec<String>,
        /// Length of the box around the piece, mm.
        length: f64,
        /// What the longest length gives between its squared ends, mm.
        longest: f64,
    },
    /// A piece is no timber: no corners, a corner that is not a number, or no length.
    #[error("{} has no size: its corners must be numbers and it must have a length", .marks.join(", "))]
    NoSize {
        /// Marks of the timbers.
        marks: Vec<String>,
    },
    /// A piece is bigger than the section of the stock.
    #[error(
        "{} is {over:.1} mm outside a section of {thickness:.0} x {depth:.0} mm: put it with the pieces of its own size",
        .marks.join(", ")
    )]
    OutsideSection {
        /// Marks of the timbers.
        marks: Vec<String>,
        /// By how much, mm.
        over: f64,
        /// Of the stock, mm.
        thickness: f64,
        /// Of the stock, mm.
        depth: f64,
    },
    /// A section, length, kerf or trim that no stock or saw has.
    #[error("{what} of {value} mm: it must be from {least} to {most} mm")]
    OutOfRange {
        /// Which figure.
        what: &'static str,
        /// The figure, mm.
        value: f64,
        /// Least that is taken, mm.
        least: f64,
        /// Most that is taken, mm.
        most: f64,
    },
    /// A price below nothing, or one past all sums.
    #[error("a length of {length:.0} mm costs {cost}: give a price from 0 up to {most}")]
    Price {
        /// Length of the stock, mm.
        length: f64,
        /// What it is said to cost.
        cost: f64,
        /// Most that is taken.
        most: f64,
    },
    /// More pieces than a plan is made for.
    #[error("{pieces} pieces of one section: at most {most} are planned at once, so divide the order")]
    TooMany {
        /// How many there are.
        pieces: usize,
        /// Most that are taken.
        most: usize,
    },
    /// What there is of stock does not do.
    #[error("the stock that there is does not do for {}: give more of it, or lengths that can be bought", .marks.join(", "))]
    NotEnoughStock {
        /// Marks of timbers that are left over.
        marks: Vec<String>,
    },
    /// A plan that does not stand its check. It is a fault of the program.
    #[error("this is not a cutting plan: {what}. It is a fault of the program; please report it with the job")]
    NotAPlan {
        /// What does not hold.
        what: String,
    },
}
