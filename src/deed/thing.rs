//! What the hand is on. Two changes of one thing in a row are one change: a part that is dragged on, a strap that is pulled
//! in steps, both bends of one cable.

use super::action::Action;
use super::page::Page;
use super::table::Kind;
use crate::bench::Change;
use crate::bench::table::Part;
use crate::bench::wiring::{End, Switch};
use crate::chain::Poke;

/// What an action is done to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Thing {
    /// A plug.
    Plug(End),
    /// A switch.
    Switch(Switch),
    /// A part on the table.
    Part(Part),
    /// The way the sensor's cable lies.
    Cable,
    /// The charger's place in the power strip.
    Charger,
    /// The strap: on or off, how tight.
    Strap,
    /// Anything else is a thing by itself.
    Other(Kind),
}

impl Action {
    /// What it is done to.
    pub fn thing(&self) -> Thing {
        match self {
            Action::Bench(Change::Plug { end, .. } | Change::Unplug { end }) => Thing::Plug(*end),
            Action::Poke(Poke::Wiggle { end }) => Thing::Plug(*end),
            Action::Bench(Change::Switch { id, .. }) => Thing::Switch(*id),
            Action::Bench(Change::Move { part: Part::Cable1 | Part::Cable2, .. }) => Thing::Cable,
            Action::Bench(Change::Move { part, .. }) => Thing::Part(*part),
            Action::Bench(Change::Charger { .. }) => Thing::Charger,
            Action::Bench(Change::StrapOn {} | Change::StrapOff {} | Change::Strap { .. }) => Thing::Strap,
            Action::Page(Page::Zoom { .. } | Page::ZoomOut {}) => Thing::Other(Kind::TimeBase),
            other => Thing::Other(other.kind()),
        }
    }
}
