//! The steps of pitching day in the order of the work: what stands ahead, what is settled, what was
//! skipped, and what must come before the yeast.

crate::choices! {
    /// One step. A closed page comes back to the one that was open, by its stored name.
    pub enum Step {
        /// The wort comes to its yeast's range.
        Cool = "cool",
        /// The starting gravity.
        Gravity = "gravity",
        /// The yeast in hand.
        Yeast = "yeast",
        /// A satellite beside the batch.
        Satellite = "satellite",
        /// Air before the yeast.
        Air = "air",
        /// Where it will stand.
        Place = "place",
        /// The yeast goes in.
        In = "in",
    }
}

/// How far a step is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum State {
    /// Nothing is known of it yet.
    Ahead,
    /// It has a result.
    Settled,
    /// It was left out on purpose.
    Skipped,
}

/// All steps, each with its state.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Steps([State; Step::ALL.len()]);

impl Steps {
    /// By what is known of each.
    ///
    /// ```
    /// use fermentside::advice::pitch::steps::{State, Step, Steps};
    ///
    /// let cool_only = |step| if step == Step::Cool { State::Settled } else { State::Ahead };
    /// let steps = Steps::of(cool_only);
    /// assert_eq!([steps.state(Step::Cool), steps.state(Step::Air)], [State::Settled, State::Ahead]);
    /// ```
    #[must_use]
    pub fn of(state: impl Fn(Step) -> State) -> Self {
        Self(Step::ALL.map(state))
    }

    /// How far one is.
    ///
    /// ```
    /// use fermentside::advice::pitch::steps::{State, Step, Steps};
    ///
    /// assert_eq!(Steps::of(|_| State::Skipped).state(Step::Place), State::Skipped);
    /// ```
    #[must_use]
    pub fn state(&self, step: Step) -> State {
        let mut all = Step::ALL.into_iter().zip(self.0);
        all.find(|(one, _)| *one == step).map_or(State::Ahead, |(_, state)| state)
    }

    /// The step to go on to from this one: the next that is ahead, then what was passed over before it,
    /// and the yeast itself when nothing else is left.
    ///
    /// ```
    /// use fermentside::advice::pitch::steps::{State, Step, Steps};
    ///
    /// let from_air = |of: fn(Step) -> State| Steps::of(of).after(Step::Air);
    /// assert_eq!(from_air(|_| State::Ahead), Step::Place);
    /// let cool = |step| if step == Step::Cool { State::Ahead } else { State::Settled };
    /// assert_eq!(from_air(cool), Step::Cool);
    /// assert_eq!(from_air(|_| State::Settled), Step::In);
    /// ```
    #[must_use]
    pub fn after(&self, step: Step) -> Step {
        let all = Step::ALL;
        let later = all.iter().skip_while(|one| **one != step).skip(1);
        let earlier = all.iter().take_while(|one| **one != step);
        let mut left = later.chain(earlier).filter(|one| **one != Step::In);
        let ahead = left.find(|one| self.state(**one) == State::Ahead);
        ahead.copied().unwrap_or(Step::In)
    }

    /// What is still to be settled, or skipped on purpose, before it is said that the yeast may go in:
    /// gravity, yeast and air, for none of them can be had after it (common practice, no source).
    ///
    /// ```
    /// use fermentside::advice::pitch::steps::{State, Step, Steps};
    ///
    /// assert_eq!(Steps::of(|_| State::Ahead).wanted(), Some(Step::Gravity));
    /// let no_place = |step| if step == Step::Place { State::Ahead } else { State::Skipped };
    /// assert_eq!(Steps::of(no_place).wanted(), None);
    /// ```
    #[must_use]
    pub fn wanted(&self) -> Option<Step> {
        let before = [Step::Gravity, Step::Yeast, Step::Air];
        before.into_iter().find(|step| self.state(*step) == State::Ahead)
    }
}
