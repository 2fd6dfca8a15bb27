//! What gets into the signal between the skin and the recorder unit.
//!
//! - [`pad`]: the pad's electrical side: its capacitance and resistance, how well its lead is shielded
//! - [`field`]: from the places of things on the table to the strength of the hum
//! - [`mains`]: the hum itself, sample by sample
//! - [`contact`]: strap pressure, place and face against the size of the pulse; lift-offs
//! - [`motion`]: fidgeting, twitches, shifts of the hand, a tap on the pad
//! - [`tremor`]: trembling and tapping, rhythms that are not the heart's
//! - [`lead_noise`]: the lead's crackle while it is moved, its swing when it is pulled
//! - [`phone`]: a telephone's bursts
//! - [`light`]: room light on an optical pad
//! - [`plug`]: a plug that makes and breaks contact

pub mod contact;
pub mod field;
pub mod lead_noise;
pub mod light;
pub mod mains;
pub mod motion;
pub mod pad;
pub mod phone;
pub mod plug;
pub mod tremor;
