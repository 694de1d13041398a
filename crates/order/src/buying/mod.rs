//! The lines of the order: timber, fixings, straps, hangers, lining, treatment; weights and prices.
