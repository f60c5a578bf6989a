//! Open: when to try the first bottle.

mod found;
mod laws;
