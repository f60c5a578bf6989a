//! Instruments, bottles, sugars, preferences and keeping.
