//! One's own pulse: the colors of a fingertip on a camera in, the pulse out; and a rhythm tapped by hand.
//!
//! | file | idea |
//! |---|---|
//! | [`series`] | mean red, green and blue of a region, each frame with its own time |
//! | [`even`] | the same at an even rate |
//! | `channels` | which mixtures of the colors may carry the pulse |
//! | `align` | when exactly a beat comes |
//! | `repeat`, `cycles`, `evidence` | what speaks for a pulse, and for which rate |
//! | `light`, `verdict` | what the light says; whether a rate is shown |
//! | [`refusal`] | why none is shown |
//! | [`reading`] | a window read |
//! | [`beats`](mod@beats) | the beats of a whole series |
//! | [`trace`], [`camera`] | the pulse as a line; a camera that is running |
//! | [`whole`] | all that a camera has seen, as one rate |
//! | [`taps`], `tapped` | taps in time with a pulse that is felt; the same as a trace |
//! | [`compare`](mod@compare) | two rates of one person |

mod align;
pub mod beats;
pub mod camera;
mod channels;
pub mod compare;
mod cycles;
pub mod even;
mod evidence;
mod light;
pub mod reading;
pub mod refusal;
mod repeat;
pub mod series;
mod tapped;
pub mod taps;
pub mod trace;
mod verdict;
pub mod whole;

pub use beats::beats;
pub use camera::Camera;
pub use compare::compare;
pub use even::RATE_HZ;
pub use reading::{Reading, read, windows};
pub use refusal::Refusal;
pub use series::{Frame, Series};
pub use taps::Taps;
pub use verdict::Bounds;
