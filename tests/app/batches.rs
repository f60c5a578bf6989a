//! The list of batches, the form of one, and Now.
