// @ts-check
// What the core's table of actions says of each; the page keeps no list of its own.

import { deedTable } from "./core.js";
/** @import { Action } from './types/action' */
/** @import { DeedRow } from './types/told' */

/** @type {Map<Action["do"], DeedRow> | null} */
let rows = null; // read once, when the core is there

/** @param {Action["do"]} name */
const row = (name) => (rows ??= new Map(deedTable().map((one) => [one.do, one]))).get(name);

/**
 * The part of the page where an action's control is: bench, axes, drawer, trace, sheet or page.
 * @param {Action["do"]} name
 */
export const paneOf = (name) => row(name)?.pane ?? null;

/**
 * Whether an action only changes what one sees of a recording.
 * @param {Action["do"]} name
 */
export const onlyLooks = (name) => row(name)?.looks === true;
