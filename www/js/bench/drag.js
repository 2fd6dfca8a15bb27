// Hands on the table: dragging plugs, parts and the lead, pressing switches, tapping the pad. Mouse, pen and touch alike.

const CLICK_PX = 5;
const REST_MS = 260; // a part that rests in the hand for this long is put to the world, so that its effect is seen

export class Hands {
  /** table: Table; now(): the core's bench; act(action): boolean; redraw(ghost|null): draws the bench, or a ghost of it. */
  constructor(table, { now, act, redraw, rests }) {
    Object.assign(this, { table, now, act, redraw, rests });
    this.held = null;
    const svg = table.svg;
    svg.addEventListener("pointerdown", (event) => this.take(event));
    svg.addEventListener("pointermove", (event) => this.move(event));
    svg.addEventListener("pointerup", (event) => this.drop(event));
    svg.addEventListener("pointercancel", () => this.letGo());
  }

  take(event) {
    if (event.button > 0 || this.held) return;
    const press = event.target.closest("[data-press]");
    const drag = event.target.closest("[data-drag]");
    const [kind, id] = (drag?.dataset.drag || ":").split(":");
    if (!press && !kind) return;
    event.preventDefault();
    this.table.svg.setPointerCapture(event.pointerId);
    const at = this.table.under(event.clientX, event.clientY);
    const bench = this.now();
    const what = kind === "end" ? bench.ends.find((end) => end.id === id) : bench.parts.find((part) => part.id === id);
    this.held = { press: press?.dataset.press, kind, id, from: at, px: [event.clientX, event.clientY], start: what ? [what.x, what.y] : at, moved: false, at: null, timer: 0, near: [] };
  }

  move(event) {
    const held = this.held;
    if (!held) return;
    if (!held.moved && Math.hypot(event.clientX - held.px[0], event.clientY - held.px[1]) < CLICK_PX) return;
    if (!held.kind) return;
    held.moved = true;
    this.table.svg.classList.add("is-dragging");
    const [x, y] = this.table.under(event.clientX, event.clientY);
    const [w, d] = this.table.size;
    held.at = [Math.max(0, Math.min(w, held.start[0] + x - held.from[0])), Math.max(0, Math.min(d, held.start[1] + y - held.from[1]))];
    if (held.kind === "end") {
      held.near = this.nearSockets(held.at);
      this.table.showNear(held.near);
    } else {
      clearTimeout(held.timer);
      held.timer = setTimeout(() => this.putDown(), REST_MS);
    }
    this.redraw(ghostOf(this.now(), held));
  }

  drop() {
    const held = this.held;
    if (!held) return;
    clearTimeout(held.timer);
    if (!held.moved) this.click(held);
    else if (held.kind === "end") this.dropEnd(held);
    else this.putDown();
    this.letGo();
  }

  letGo() {
    if (this.held) clearTimeout(this.held.timer);
    this.held = null;
    this.table.svg.classList.remove("is-dragging");
    this.table.showNear([]);
    this.redraw(null);
  }

  /** Puts the held part where it is, without letting go of it. */
  putDown() {
    const { id, at } = this.held;
    const x = Math.round(at[0] * 2) / 2, y = Math.round(at[1] * 2) / 2;
    if (this.held.put?.[0] === x && this.held.put?.[1] === y) return;
    this.held.put = [x, y];
    if (this.act({ do: "move", part: id, x, y })) {
      const part = this.now().parts.find((one) => one.id === id);
      this.held.from = [this.held.from[0] + at[0] - this.held.start[0] - (at[0] - part.x), this.held.from[1] + at[1] - this.held.start[1] - (at[1] - part.y)];
      this.held.start = [part.x, part.y];
    }
  }

  dropEnd(held) {
    const bench = this.now();
    const end = bench.ends.find((one) => one.id === held.id);
    const target = held.near[0];
    if (target) {
      if (target.id !== end.socket) this.act({ do: "plug", end: held.id, socket: target.id });
      return;
    }
    this.rests.set(held.id, held.at);
    if (end.socket) this.act({ do: "unplug", end: held.id });
  }

  click(held) {
    if (held.press) {
      const [verb, id] = held.press.split(":");
      if (verb === "switch") this.act({ do: "switch", id, on: !this.now().switches[id] });
      if (verb === "tap") this.act({ do: "tap_pad" });
      if (verb === "rescan") this.act({ do: "rescan" });
    } else if (held.kind === "end") this.act({ do: "wiggle", end: held.id });
    else if (held.id === "charger") this.act({ do: "charger", plugged: !this.now().charger_plugged });
    else if (held.id === "lamp") this.act({ do: "switch", id: "lamp", on: !this.now().switches.lamp });
  }

  /** Sockets a hand could be aiming at, nearest first: by distance alone, never by what is right. */
  nearSockets([x, y]) {
    const reach = Math.max(6, 30 / this.table.pxPerCm);
    return this.now().sockets
      .map((socket) => ({ ...socket, far: Math.hypot(socket.x - x, socket.y - y) }))
      .filter((socket) => socket.far < reach)
      .sort((a, b) => a.far - b.far);
  }
}

/** The bench as it would look with the held thing where the hand has it. */
function ghostOf(bench, held) {
  const ghost = structuredClone(bench);
  if (held.kind === "end") {
    const end = ghost.ends.find((one) => one.id === held.id);
    [end.x, end.y] = held.at;
    end.socket = null;
    return ghost;
  }
  const part = ghost.parts.find((one) => one.id === held.id);
  const dx = held.at[0] - part.x, dy = held.at[1] - part.y;
  part.x += dx;
  part.y += dy;
  for (const socket of ghost.sockets) {
    if (socket.part !== held.id) continue;
    socket.x += dx;
    socket.y += dy;
    const end = ghost.ends.find((one) => one.socket === socket.id);
    if (end) { end.x += dx; end.y += dy; }
  }
  if (held.id === "hand") {
    for (const [a, b] of [["x", "y"], ["finger_x", "finger_y"]]) { ghost.hand[a] += dx; ghost.hand[b] += dy; }
  }
  if (held.id.startsWith("lead")) {
    const old = [part.x - dx, part.y - dy];
    const point = ghost.lead.points.find((one) => Math.hypot(one[0] - old[0], one[1] - old[1]) < 0.5);
    if (point) { point[0] = part.x; point[1] = part.y; }
  }
  return ghost;
}
