//! What gets into the signal between the skin and the recorder.
//!
//! - [`sensor`]: the sensor's electrical side: its capacitance and resistance, how well its cable is shielded
//! - [`field`]: from the places of things on the table to the strength of the hum
//! - [`power_line`]: the hum itself, sample by sample
//! - [`contact`]: strap pressure, place and face against the size of the pulse; lift-offs
//! - [`motion`]: fidgeting, twitches, shifts of the hand, a tap on the sensor
//! - [`tremor`]: trembling and tapping, rhythms that are not the heart's
//! - [`cable_noise`]: the cable's crackle while it is moved, its swing when it is pulled
//! - [`phone`]: a phone's bursts
//! - [`light`]: room light on an optical sensor
//! - [`plug`]: a plug that makes and breaks contact
//! - [`damp`]: a plug that leaks
//! - [`sleeve`]: a sleeve that presses the forearm
//! - [`thumb`]: a helper's thumb with a pulse of its own
//! - [`shaken`]: a table that is shaken by steps
//! - [`fan`]: a cable that is shaken by the computer's fan

pub mod cable_noise;
pub mod contact;
pub mod damp;
pub mod fan;
pub mod field;
pub mod light;
pub mod motion;
pub mod phone;
pub mod plug;
pub mod power_line;
pub mod sensor;
pub mod shaken;
pub mod sleeve;
pub mod thumb;
pub mod tremor;
