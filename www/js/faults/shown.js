// @ts-check
// The bench on which a fault is shown: a calm subject at a tidy table, so that nothing but the fault is to be seen.

/** @import { CatalogueFault, FaultSpec } from '../types/told' */

/**
 * Its scenario, with a fault or without. The same seed gives the same heart with any of them, and with none.
 * @param {FaultSpec | null} fault @param {CatalogueFault["sensor"]} [sensor] the kind that the fault needs: without it too
 * @param {readonly number[]} [line] the power line, Hz and volts
 */
export const shownBench = (fault, sensor = null, [hz, volts] = [60, 120]) => `id = "shown"
level = 1
title = "shown"
aim = "shown"
brief = "shown"
${sensor ? `[sensor]\nkind = "${sensor}"\n` : ""}[power_line]
hz = ${hz}
volts = ${volts}
[subject]
restlessness = 0.2
pulse_mv = 40
premature_per_min = 0
rest_rate_bpm = 68
[recorder]
range_v = ${sensor === "optical" ? 0.5 : 0.05}
${fault ? `[[fault]]\nname = "${fault.name}"\nseverity = ${fault.severity}\n` : ""}`;
