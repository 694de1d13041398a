//! Which figure is asked about.

/// A figure that can be asked about. As text: `true-length J3`, `cut-length J3`,
/// `pitch H1`, `face J3 2`, `edge J3 2`, `tilt J3 2`, `mitre J3 2` (the number of
/// the cut), `seat J3`, `heel J3`, `upstand J3`, `backing H1 0`, `drop H1`,
/// `less J3 0` (the number of the deduction), `stock J3`, `tape J3 1` (the number
/// of the mark), and of the roof `rise`, `wall-pitch B`, `overhang B`, `closing`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Question {
    /// Which figure: `true-length`.
    pub figure: String,
    /// Of what: a timber's mark or a wall's letter.
    pub of: String,
    /// Which of several.
    pub number: usize,
}
