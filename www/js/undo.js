// @ts-check
// What takes the last deed of the hand back: the deed that puts things as they were. It is done, and logged, as what it is.

/** @import { Action } from './types/action' */
/** @import { View } from './types/view' */

/**
 * The deed that takes an action back, from the view before it; null where nothing can.
 * @param {Action} action @param {View} before @returns {Action | null}
 */
export function inverseOf(action, before) {
  const { bench, recorder } = before;
  const set = recorder ?? before.display;
  switch (action.do) {
    case "plug":
    case "unplug": {
      const socket = bench?.ends.find((end) => end.id === action.end)?.socket;
      return socket ? { do: "plug", end: action.end, socket } : { do: "unplug", end: action.end };
    }
    case "switch": return { do: "switch", id: action.id, on: !action.on };
    case "charger": return { do: "charger", plugged: !action.plugged };
    case "strap_on": return { do: "strap_off" };
    case "strap_off": return { do: "strap_on" };
    case "strap": return bench && { do: "strap", tightness: bench.strap.tightness };
    case "sensor_place": return bench && { do: "sensor_place", place: bench.strap.place };
    case "sensor_side": return bench && { do: "sensor_side", side: bench.strap.side };
    case "hand_height": return bench && { do: "hand_height", cm: bench.hand.height_cm };
    case "shade": return { do: "shade", on: !action.on };
    case "other_hand": return bench && { do: "other_hand", on: bench.strap.other_hand };
    case "move": {
      const part = bench?.parts.find((one) => one.id === action.part);
      return part ? { do: "move", part: part.id, x: part.x, y: part.y } : null;
    }
    case "range": return set && { do: "range", v: set.range_v };
    // A zero is where the trace was when it was set: only the first one can be taken back to none.
    case "zero": return set && set.zero_v === 0 ? { do: "zero_clear" } : null;
    case "time_base": return { do: "time_base", s: before.time_base.s };
    case "invert": return { do: "invert", on: !action.on };
    case "input": return recorder && { do: "input", n: recorder.input };
    case "cursor": return { do: "cursor", which: action.which, t: before.cursors[action.which] };
    case "mark": return { do: "unmark", t: action.t };
    case "unmark": return { do: "mark", t: action.t };
    case "name": return { do: "unname", fault: action.fault };
    case "unname": return { do: "name", fault: action.fault };
    default: return null;
  }
}
