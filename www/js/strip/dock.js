// @ts-check
// The strip stays in reach: where it is out of sight below, a low copy of the drum's band docks at the foot of the window.
// It is the same drum; only its place and height change.

const SMALL = matchMedia("(max-width: 999px)"); // here the panes decide, see panes.js
const LEAVE = 0.35, RETURN = 0.55; // shares of the drum in sight at which it docks and goes back

export class Dock {
  /**
   * place: the element that holds the drum and keeps its room.
   * @param {HTMLElement} place
   */
  constructor(place) {
    this.place = place;
    this.ended = new AbortController();
    const { signal } = this.ended;
    this.watch = new IntersectionObserver(() => this.update(), { threshold: Array.from({ length: 21 }, (_, k) => k / 20) });
    this.watch.observe(place);
    SMALL.addEventListener("change", () => this.update(), { signal });
    document.addEventListener("pane-shown", () => this.update(), { signal });
    this.update();
  }

  update() {
    const { dataset } = document.body;
    const docked = dataset.dock !== undefined;
    const dock = SMALL.matches ? dataset.pane !== "strip" : this.outOfSight(docked);
    if (dock === docked) return;
    if (dock) this.place.style.setProperty("--room", `${this.place.offsetHeight}px`);
    if (dock) dataset.dock = "";
    else delete dataset.dock;
  }

  /**
   * Is too little of the strip's own place in sight, and the rest further down?
   * @param {boolean} docked
   */
  outOfSight(docked) {
    const { top, bottom, height } = this.place.getBoundingClientRect();
    if (height === 0 || bottom <= innerHeight) return false;
    return (innerHeight - top) / height < (docked ? RETURN : LEAVE);
  }

  /** Does the drum lie docked beside its own place on a large screen? */
  get lies() {
    return !SMALL.matches && document.body.dataset.dock !== undefined;
  }

  end() {
    this.watch.disconnect();
    this.ended.abort();
    delete document.body.dataset.dock;
  }
}
