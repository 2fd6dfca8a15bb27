//! Dicrotic: a practice bench for the finger-pulse lab.
