// @ts-check
// An address that leads to nothing.

/** Thrown with words for the reader: the first screen is shown, and above it what was wrong. */
export class Nowhere extends Error {}
