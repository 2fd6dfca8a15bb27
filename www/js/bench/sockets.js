// @ts-check
// Sockets and plugs, told apart by shape. Both are drawn around the point where the plug meets the socket.

import { s } from "../dom.js";
import { t } from "../text.js";
import { inked, label, stroke } from "./marks.js";
import { pen } from "./pen.js";
/** @import { End, Shape } from '../types/names' */
/** @import { Kid } from '../types/page' */
/** @import { EndAt, SocketAt } from '../types/view' */
/** @import { Pen } from './pen.js' */

/** @type {Record<Shape, (p: Pen) => Kid[]>} */
const SHAPES = {
  inlet: (p) => [inked(() => "M-2.200 -1.300H2.200V.7L1.400 1.500H-1.400L-2.200 .7Z", "hole"), stroke("M-1 -.4v.9M0 -.7v.9M1 -.4v.9", "thin")],
  // round pins where the power line has some 230 V, flat blades and a ground pin where it has some 120 V; the drawing shows one of them
  outlet: (p) => [inked(() => p.circle(0, 0, 2.3), "hole"), s("g", { class: "pins-round" }, s("circle", { class: "dot", cx: -0.85, r: 0.38 }), s("circle", { class: "dot", cx: 0.85, r: 0.38 })),
    s("g", { class: "pins-flat" }, stroke("M-.85 -1v1.300M.85 -1v1.300", "thin"), s("circle", { class: "dot", cy: 1.1, r: 0.34 }))],
  data: (p) => [inked(() => p.rect(-1.6, -0.95, 3.2, 1.9, 0.3), "hole"), stroke("M-1 .2H1", "thin")],
  port: (p) => [inked(() => p.rect(-0.9, -1.7, 1.8, 3.4, 0.6), "hole"), stroke("M0 -.8V.8", "thin")],
  signal: (p) => [inked(() => p.circle(0, 0, 1.75), "hole"), stroke(p.circle(0, 0, 1.05), "thin faint"), s("circle", { class: "dot", r: 0.5 })],
  post: (p) => [inked(() => p.rect(-2.3, -0.9, 4.6, 1.8, 0.3), "hole"), inked(() => p.rect(-1.55, -0.3, 0.9, 2.6, 0.15), "body-2"), inked(() => p.rect(0.65, -0.3, 0.9, 2.6, 0.15), "body-2")],
};

/**
 * Where the short name of a socket is written, from its middle: x, y, kind, and x, y where the table is shown turned. At the recorder it
 * stands on the box, where no cable lies; "after" and "before" tell at which end it begins where it runs away from the box's edge.
 * @type {Record<Shape, [number, number, string, number, number]>}
 */
const BESIDE = {
  inlet: [0, 4.9, "after", -1, 2.7],
  data: [0.7, 4.9, "after", -1, 2.7],
  signal: [-4.3, 1, "", -5.3, 0],
  post: [0, -2.5, "before", -1, -2.3],
  port: [2.6, 0.8, "", 2.6, 0.8],
  outlet: [0, 5.4, "after", -1, 3.2],
};

/**
 * A socket with its short name beside it.
 * @param {SocketAt} socket
 */
export const drawSocket = (socket) => {
  const p = pen(socket.id, 0.05);
  const [x, y, kind, tx, ty] = BESIDE[socket.kind] ?? BESIDE.signal;
  return s("g", { class: `socket socket-${socket.kind}`, data: { socket: socket.id } },
    s("circle", { class: "socket-near", r: 3.4 }), (SHAPES[socket.kind] ?? SHAPES.signal)(p),
    label(t(`socket-short-${socket.id}`), x, y, `small ${kind}`, tx, ty),
    socket.id === "port_charge" && stroke("M3 -1.300L1.900 .2H2.900L2.300 1.500", "thin"));
};

/** @type {Record<End, (p: Pen) => Kid[]>} */
const BODIES = {
  power_recorder: (p) => [inked(() => p.rect(-2, -0.4, 4, 4.6, 0.8), "plug"), stroke("M-1.100 1.200H1.100M-1.100 2.200H1.100", "thin")],
  power_wall: (p) => [s("g", { class: "pins-round" }, inked(() => p.circle(0, 0.4, 2.1), "plug")), s("g", { class: "pins-flat" }, inked(() => p.rect(-1.9, -1.5, 3.8, 3.9, 0.9), "plug")), inked(() => p.rect(-1, 2.2, 2, 2.2, 0.5), "plug"),
    s("g", { class: "pins-round" }, stroke(p.circle(0, 0.4, 1.2), "thin")), s("g", { class: "pins-flat" }, stroke("M-.85 -.6v1.300M.85 -.6v1.300", "thin"))],
  data_recorder: (p) => [inked(() => p.rect(-1.7, -0.3, 3.4, 3.8, 0.6), "plug"), stroke("M-.8 1.300H.8", "thin")],
  data_computer: (p) => [inked(() => p.rect(-1.4, -0.3, 2.8, 4.2, 0.4), "plug"), stroke("M-.6 1h1.200M0 1v1.600", "thin")],
  sensor: (p) => [inked(() => p.circle(0, 0.2, 1.7), "plug"), inked(() => p.rect(-0.95, 1.6, 1.9, 3, 0.5), "plug"), stroke("M-.5 2.600h1M-.5 3.400h1", "thin")],
};

/** How far behind the meeting point the cable leaves the plug, cm. */
export const PLUG_LENGTH = { power_recorder: 4.2, power_wall: 4.3, data_recorder: 3.5, data_computer: 3.9, sensor: 4.6 };

/**
 * The plug of a cable's end. It points up the page; the group is turned to its cable.
 * @param {EndAt} end
 */
export const drawPlug = (end) => {
  const p = pen(end.id, 0.05);
  return s("g", { class: "plug", data: { drag: `end:${end.id}`, end: end.id } }, s("circle", { class: "hit plug-hit", cy: 1.6, r: 4 }),
    (BODIES[end.id] ?? BODIES.sensor)(p), s("title", {}, t(`end-${end.id}`)));
};
