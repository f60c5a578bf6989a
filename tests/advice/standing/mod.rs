//! How a batch stands: the laws it keeps for any record, and courses worked on paper.

mod laws;
mod measured;
mod verdicts;
