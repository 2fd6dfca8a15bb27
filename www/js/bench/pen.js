// The drawn line: paths with the slight, repeatable unsteadiness of a stylus. Decoration only; lengths in cm of table.

/** A small repeatable stream of numbers in 0..1 for a name, so that a part looks the same each time. */
function stream(name) {
  let state = 2166136261;
  for (const char of name) state = Math.imul(state ^ char.charCodeAt(0), 16777619);
  return () => {
    state = Math.imul(state ^ (state >>> 15), 2246822519) + 374761393;
    return ((state ^ (state >>> 13)) >>> 0) / 4294967296;
  };
}

const r2 = (v) => Math.round(v * 100) / 100;
const at = ([x, y]) => `${r2(x)} ${r2(y)}`;

/** A smooth path through points (Catmull-Rom as cubics). */
export function smooth(points, closed = false, tension = 6) {
  const n = points.length;
  const get = (i) => (closed ? points[(i + n) % n] : points[Math.max(0, Math.min(n - 1, i))]);
  let d = `M${at(points[0])}`;
  for (let i = 0; i < (closed ? n : n - 1); i += 1) {
    const [p0, p1, p2, p3] = [get(i - 1), get(i), get(i + 1), get(i + 2)];
    const c1 = [p1[0] + (p2[0] - p0[0]) / tension, p1[1] + (p2[1] - p0[1]) / tension];
    const c2 = [p2[0] - (p3[0] - p1[0]) / tension, p2[1] - (p3[1] - p1[1]) / tension];
    d += `C${at(c1)} ${at(c2)} ${at(p2)}`;
  }
  return closed ? `${d}Z` : d;
}

/** A pen of its own unsteadiness: `shake` in cm. */
export function pen(name, shake = 0.11) {
  const next = stream(name);
  const off = () => (next() - 0.5) * 2 * shake;

  const line = (x1, y1, x2, y2) => {
    const len = Math.hypot(x2 - x1, y2 - y1);
    const n = Math.max(2, Math.round(len / 5));
    const points = [];
    for (let i = 0; i <= n; i += 1) points.push([x1 + ((x2 - x1) * i) / n + off(), y1 + ((y2 - y1) * i) / n + off()]);
    return smooth(points);
  };

  const rect = (x, y, w, h, r = 1) => {
    const points = [];
    const side = (x1, y1, x2, y2) => {
      const n = Math.max(2, Math.round(Math.hypot(x2 - x1, y2 - y1) / 4));
      for (let i = 0; i <= n; i += 1) points.push([x1 + ((x2 - x1) * i) / n + off(), y1 + ((y2 - y1) * i) / n + off()]);
    };
    const corner = (cx, cy, from) => {
      const a = from + Math.PI / 4;
      points.push([cx + r * Math.cos(a), cy + r * Math.sin(a)]);
    };
    side(x + r, y, x + w - r, y);
    corner(x + w - r, y + r, -Math.PI / 2);
    side(x + w, y + r, x + w, y + h - r);
    corner(x + w - r, y + h - r, 0);
    side(x + w - r, y + h, x + r, y + h);
    corner(x + r, y + h - r, Math.PI / 2);
    side(x, y + h - r, x, y + r);
    corner(x + r, y + r, Math.PI);
    return smooth(points, true);
  };

  const circle = (cx, cy, r) => {
    const n = Math.max(8, Math.round(r * 4));
    const points = [];
    for (let i = 0; i < n; i += 1) {
      const a = (i / n) * 2 * Math.PI;
      points.push([cx + r * Math.cos(a) + off(), cy + r * Math.sin(a) + off()]);
    }
    return smooth(points, true);
  };

  /** Slanting shade strokes inside a box, each a little different in length. */
  const hatch = (x, y, w, h, gap = 1.1, lean = 0.7) => {
    let d = "";
    for (let u = 0; u < w; u += gap) {
      const cut = h * (0.72 + 0.28 * next());
      d += `M${at([x + u + off(), y + h])}L${at([x + u + cut * lean + off(), y + h - cut])}`;
    }
    return d;
  };

  return { line, rect, circle, hatch, off, next };
}
