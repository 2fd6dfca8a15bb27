// How leads lie: a smooth slack curve between two plugs, or through the points of the pad's lead.

import { smooth } from "./pen.js";

const add = ([x, y], [u, v], k) => [x + u * k, y + v * k];
const r2 = (v) => v.toFixed(2);

/** A curve that leaves a along da and reaches b against db; unit vectors point away from the plugs. */
export function slackCurve(a, da, b, db, slack = 0.45) {
  const reach = 5 + slack * Math.hypot(b[0] - a[0], b[1] - a[1]);
  const c1 = add(a, da, reach), c2 = add(b, db, reach);
  return `M${a.map(r2)}C${c1.map(r2)} ${c2.map(r2)} ${b.map(r2)}`;
}

/** The pad's lead through its points; spare length shows as waves between them, none at the points themselves. */
export function padCurve(points, slackCm) {
  const lens = points.slice(1).map((q, i) => Math.hypot(q[0] - points[i][0], q[1] - points[i][1]));
  const total = lens.reduce((sum, v) => sum + v, 0) || 1;
  const path = [points[0]];
  lens.forEach((len, i) => {
    const [a, b] = [points[i], points[i + 1]];
    if (len > 3) {
      const waves = Math.max(1, Math.round(len / 14));
      const size = Math.min(4.5, 1.15 * Math.sqrt(Math.max(0, slackCm) * (len / total)) * 0.6);
      const nx = -(b[1] - a[1]) / len, ny = (b[0] - a[0]) / len;
      const steps = waves * 4;
      for (let k = 1; k < steps; k += 1) {
        const u = k / steps;
        const bump = Math.sin(u * waves * Math.PI) * size * (i % 2 ? -1 : 1);
        path.push([a[0] + (b[0] - a[0]) * u + nx * bump, a[1] + (b[1] - a[1]) * u + ny * bump]);
      }
    }
    path.push(b);
  });
  return smooth(path);
}

/** The unit vector from a to b. */
export function towards(a, b) {
  const len = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
  return [(b[0] - a[0]) / len, (b[1] - a[1]) / len];
}
