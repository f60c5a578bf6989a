//! What stands round every screen.
