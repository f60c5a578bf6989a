//! Open: when to try the first bottle.

mod laws;
