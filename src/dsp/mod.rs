//! Digital filters and transforms for whole records that lie in memory. The recorder's own filters, which work sample
//! by sample as the trace comes in, are another matter and live elsewhere.
//!
//! | module | what lives there |
//! |---|---|
//! | [`section`] | second-order sections: Butterworth low-pass and high-pass |
//! | [`zero_phase`] | a cascade run forward and backward, so that nothing is shifted |
//! | [`resample`] | averaging down to a lower rate; lines, cubics and splines to another |
//! | [`fft`] | a small power-of-two transform and Welch's spectrum |

pub mod fft;
pub mod resample;
pub mod section;
pub mod zero_phase;
