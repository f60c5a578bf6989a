//! Bottling day and paper.
