//! Watch: what stands beside the question whether it is finished, which [`standing`](super::standing)
//! answers: beer too warm or too cold, the silent airlock, the steps for a slow or stuck one.

pub mod beer_temperature;
pub mod bubbles;
pub mod ladder;
