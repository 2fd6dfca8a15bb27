//! What can tell one cause from another: a kind of action with what it is done to. The catalogue of faults names them.

use super::action::Action;
use super::page::Page;
use super::table::Kind;
use crate::bench::Change;
use crate::bench::look::Spot;
use crate::bench::table::{Part, Point};
use crate::bench::wiring::{End, Switch};
use crate::chain::Poke;
use crate::plain::json;
use serde_json::Value;

/// How far a part has to be moved before the trace can tell something, cm (design default: less than the width of a hand).
pub const MOVED_CM: f64 = 8.0;

/// Something that can tell.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Tell {
    /// An action, whatever its fields.
    Does(Kind),
    /// Another place for a plug.
    Plug(End),
    /// A wiggle at a plug.
    Wiggle(End),
    /// A switch turned.
    Switch(Switch),
    /// A look at a place.
    Look(Spot),
    /// A part moved by at least [`MOVED_CM`].
    Moved(Part),
    /// The sensor's cable laid otherwise, by at least [`MOVED_CM`].
    Cable,
    /// The trace drawn out or together: another time base, or a zoom.
    Stretch,
}

impl Tell {
    /// Whether an action is this; `from` is where what was moved stood before.
    pub fn is(self, action: &Action, from: Option<Point>) -> bool {
        let far = |x: f64, y: f64| from.is_some_and(|p| p.distance(Point { x, y }) >= MOVED_CM);
        match (self, action) {
            (Tell::Does(kind), action) => action.kind() == kind,
            (Tell::Plug(end), Action::Bench(Change::Plug { end: e, .. } | Change::Unplug { end: e })) => {
                *e == end
            }
            (Tell::Wiggle(end), Action::Poke(Poke::Wiggle { end: e })) => *e == end,
            (Tell::Switch(id), Action::Bench(Change::Switch { id: i, .. })) => *i == id,
            (Tell::Look(spot), Action::Poke(Poke::Look { at })) => *at == spot,
            (Tell::Moved(part), Action::Bench(Change::Move { part: p, x, y })) => *p == part && far(*x, *y),
            (Tell::Cable, Action::Bench(Change::Move { part: Part::Cable1 | Part::Cable2, x, y })) => {
                far(*x, *y)
            }
            (Tell::Stretch, Action::Page(Page::TimeBase { .. } | Page::Zoom { .. })) => true,
            _ => false,
        }
    }

    /// What to do, as the page and the catalogue say it: the action's name and what it is done to.
    pub fn told(self) -> Value {
        match self {
            Tell::Does(kind) => json!({"do": kind.name()}),
            Tell::Plug(end) => json!({"do": "plug", "end": end}),
            Tell::Wiggle(end) => json!({"do": "wiggle", "end": end}),
            Tell::Switch(id) => json!({"do": "switch", "id": id}),
            Tell::Look(at) => json!({"do": "look", "at": at}),
            Tell::Moved(part) => json!({"do": "move", "part": part}),
            Tell::Cable => json!({"do": "move", "part": "cable1"}),
            Tell::Stretch => json!({"do": "time_base"}),
        }
    }
}
