// The few small pictures on buttons, in the page's own line.

import { s } from "./dom.js";

const PATHS = {
  theme: "M10 3a7 7 0 1 0 0 14V3ZM10 3a7 7 0 0 1 0 14",
  open: "M3 16V5l2-1.5h4L10.500 5H17v11ZM7 11.500h1.500l1.300-3 1.200 4.500 1-1.500H14",
  list: "M4 5.500h1M8 5.500h8M4 10h1M8 10h8M4 14.500h1M8 14.500h8",
  minus: "M5 10h10",
  plus: "M5 10h10M10 5v10",
  left: "M12.500 4.500 7 10l5.500 5.500",
  right: "M7.500 4.500 13 10l-5.500 5.500",
  hold: "M7.500 5v10M12.500 5v10",
  live: "M2.500 12h3.500l2-7 3 10 1.800-5 1.200 2h3.500",
  record: "M10 5a5 5 0 1 1 0 10a5 5 0 0 1 0-10Z",
  stop: "M5.500 5.500h9v9h-9Z",
  save: "M10 3.500v9M6.500 9.500 10 13l3.500-3.500M4 16.500h12",
  up: "M4.500 12.500 10 7l5.500 5.500",
  down: "M4.500 7.500 10 13l5.500-5.500",
  ear: "M4 8v4h2.500L10 15V5L6.500 8ZM13 7.500a4 4 0 0 1 0 5M15 5.500a7 7 0 0 1 0 9",
  sound: "M6 14.500a2.200 1.700 0 1 0 2.600-1.600V4.500l6-1v8.500a2.200 1.700 0 1 0-2.600 1.600",
  wiggle: "M2.500 12.500c2 0 2-5 4-5s2 5 4 5 2-5 4-5 2 2.500 3 2.500",
  cross: "M5.500 5.500 14.500 14.500M14.500 5.500 5.500 14.500",
  cards: "M3 6.500h14v10H3ZM5 6.500v-2.500h4l1 2.500M6 10.500h8M6 13.500h5",
  again: "M15.500 8A6 6 0 1 0 16 11M16 4v4.500h-4.500",
};

/** A 20 px picture; it is never the only name of a button. */
export const icon = (name) =>
  s("svg", { viewBox: "0 0 20 20", width: 20, height: 20, "aria-hidden": "true", focusable: "false" }, s("path", { d: PATHS[name] }));
