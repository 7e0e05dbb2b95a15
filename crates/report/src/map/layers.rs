//! What can be switched on the map?

/// One kind of thing on the map; on the page each can be switched on and off.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Layer {
    /// Times driven over.
    Visits,
    /// Usual time between two visits.
    Waits,
    /// Ground past its longest allowed wait.
    Overdue,
    /// Driven lines.
    Legs,
    /// What was installed.
    Plan,
    /// Passages, and things that are in no plan.
    Lie,
    /// Ground without evidence.
    Unseen,
    /// Unvisited ground that luck still explains.
    NotYet,
    /// Unvisited ground that luck does not explain.
    Missed,
    /// Worn lines.
    Worn,
    /// Tape distances.
    Tapes,
    /// Suggested changes.
    Suggestions,
    /// Stuck spots.
    Stuck,
    /// Strays, and silences during which the machine may have been stuck.
    Strays,
    /// Places that somebody pointed at.
    Asked,
}

impl Layer {
    /// From the ground upwards.
    pub(crate) const ALL: [Self; 15] = [
        Self::Visits,
        Self::Waits,
        Self::Overdue,
        Self::Legs,
        Self::Plan,
        Self::Lie,
        Self::Unseen,
        Self::NotYet,
        Self::Missed,
        Self::Worn,
        Self::Tapes,
        Self::Suggestions,
        Self::Strays,
        Self::Stuck,
        Self::Asked,
    ];

    /// Its name in the page.
    pub(crate) const fn key(self) -> &'static str {
        match self {
            Self::Visits => "visits",
            Self::Waits => "waits",
            Self::Overdue => "overdue",
            Self::Legs => "legs",
            Self::Plan => "plan",
            Self::Lie => "lie",
            Self::Unseen => "unseen",
            Self::NotYet => "not-yet",
            Self::Missed => "missed",
            Self::Worn => "worn",
            Self::Tapes => "tapes",
            Self::Suggestions => "suggestions",
            Self::Stuck => "stuck",
            Self::Strays => "strays",
            Self::Asked => "asked",
        }
    }

    /// Whether it shows initially, and in the picture.
    pub(crate) const fn is_on(self) -> bool {
        !matches!(
            self,
            Self::Waits | Self::Overdue | Self::Legs | Self::Lie | Self::Strays
        )
    }
}
