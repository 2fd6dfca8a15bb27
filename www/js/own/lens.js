// @ts-check
// The camera as a meter of colour: opens one camera after the other until one has a light, and tells of each picture its time and the
// mean colour of its middle. No picture is kept: each is drawn over the one before on a canvas of a few thousand points.

/** @typedef {"policy" | "policy_page" | "insecure" | "denied" | "missing" | "busy" | "failed"} LensFailure */
/** @typedef {"on" | "none" | "failed"} Light */
/** What newer browsers tell of a camera. @typedef {MediaTrackCapabilities & { torch?: boolean, exposureMode?: string[], whiteBalanceMode?: string[], focusMode?: string[] }} Can */
/** @typedef {{ at_s: number, red: number, green: number, blue: number }} Colour */

const SIDE = 96; // points across the canvas: enough to average, few enough for an old phone
const MIDDLE = 0.5; // of the picture's shorter side
const WANTED = { width: { ideal: 320 }, height: { ideal: 240 }, frameRate: { ideal: 30 } };

/** Why a camera could not be opened; told is what the browser says of it. */
export class LensError extends Error {
  /** @param {LensFailure} code @param {string} [told] */
  constructor(code, told = "") {
    super(told);
    this.code = code;
  }
}

/** Whether this page stands in the frame of another. */
export const framed = () => {
  try {
    return window.top !== window.self;
  } catch {
    return true;
  }
};

/** Whether the page around this one, or its server, forbids the camera; where the browser does not tell, it is asked. */
function forbidden() {
  const policy = /** @type {{ featurePolicy?: { allowsFeature(name: string): boolean } }} */ (/** @type {unknown} */ (document)).featurePolicy;
  return policy ? !policy.allowsFeature("camera") : false;
}

/** @param {unknown} error @returns {LensError} */
function named(error) {
  const { name, message } = error instanceof Error ? error : { name: "", message: String(error) };
  if (name === "NotAllowedError" || name === "SecurityError") return new LensError("denied", message);
  if (name === "NotFoundError" || name === "OverconstrainedError" || name === "DevicesNotFoundError") return new LensError("missing", message);
  if (name === "NotReadableError" || name === "AbortError") return new LensError("busy", message);
  return new LensError("failed", message);
}

export class Lens {
  /**
   * coloured(colour): a picture has come; gone(): the camera was taken away.
   * @param {{ coloured: (colour: Colour) => unknown, gone: () => unknown }} tell
   */
  constructor({ coloured, gone }) {
    this.coloured = coloured;
    this.gone = gone;
    /** @type {MediaStream | null} */
    this.stream = null;
    /** @type {Light} */
    this.light = "none";
    /** @type {string[]} */
    this.others = []; // ids of cameras, of which the one that is open is `place`
    this.place = 0;
    this.over = false;
    this.clock = ""; // which of a picture's times is read; one for all of them
    /** @type {number | null} */
    this.first = null;
    this.video = Object.assign(document.createElement("video"), { muted: true, playsInline: true, disablePictureInPicture: true });
    this.canvas = Object.assign(document.createElement("canvas"), { width: SIDE, height: SIDE });
    this.context = /** @type {CanvasRenderingContext2D} */ (this.canvas.getContext("2d", { willReadFrequently: true, alpha: false }));
  }

  /** Opens a camera: the first with a light, else the one that the browser gives. Throws a LensError. */
  async open() {
    if (forbidden()) throw new LensError(framed() ? "policy" : "policy_page");
    if (!navigator.mediaDevices?.getUserMedia) throw new LensError("insecure");
    const first = await this.#get({ ...WANTED, facingMode: { ideal: "environment" } });
    await this.#choose(first);
    if (this.over) return this.close();
    await this.#run();
  }

  /** Goes on to the next camera. */
  async another() {
    this.#stop();
    this.place = (this.place + 1) % Math.max(1, this.others.length);
    this.stream = await this.#get({ ...WANTED, deviceId: { exact: this.others[this.place] } });
    if (this.over) return this.close();
    await this.#run();
  }

  /** @param {MediaTrackConstraints} video */
  async #get(video) {
    try {
      return await navigator.mediaDevices.getUserMedia({ video, audio: false });
    } catch (error) {
      throw named(error);
    }
  }

  /**
   * Looks for a light: at the camera that was given, then at the others in turn.
   * @param {MediaStream} first
   */
  async #choose(first) {
    this.stream = first;
    const given = first.getVideoTracks()[0].getSettings().deviceId ?? "";
    const all = (await navigator.mediaDevices.enumerateDevices()).filter(({ kind, deviceId }) => kind === "videoinput" && deviceId).map(({ deviceId }) => deviceId);
    this.others = [given, ...all.filter((id) => id !== given)];
    this.place = 0;
    if (canOf(first).torch) return;
    for (let k = 1; k < this.others.length && !this.over; k += 1) {
      this.#stop();
      const stream = await this.#get({ ...WANTED, deviceId: { exact: this.others[k] } }).catch(() => null);
      this.stream = stream;
      if (stream && canOf(stream).torch) {
        this.place = k;
        return;
      }
    }
    if (this.others.length < 2 || this.over) return;
    this.#stop();
    this.stream = await this.#get({ ...WANTED, deviceId: { exact: given } });
  }

  async #run() {
    const track = this.#track();
    if (!track) throw new LensError("missing");
    const { stream } = this;
    track.addEventListener("ended", () => this.stream === stream && !this.over && this.gone());
    if (track.readyState === "ended") throw new LensError("busy");
    this.light = await this.#turnLight(track);
    this.video.srcObject = stream;
    await this.video.play().catch((error) => {
      if (!this.over) throw named(error);
    });
    this.#next();
  }

  #track() {
    return this.stream?.getVideoTracks()[0];
  }

  /** @param {MediaStreamTrack} track @returns {Promise<Light>} */
  async #turnLight(track) {
    if (!canOf(this.stream).torch) return "none";
    try {
      await track.applyConstraints({ advanced: [/** @type {MediaTrackConstraintSet} */ ({ torch: true })] });
      return /** @type {{ torch?: boolean }} */ (track.getSettings()).torch === false ? "failed" : "on";
    } catch {
      return "failed";
    }
  }

  /**
   * Keeps brightness, color and focus as they are, or lets the camera choose again; what it cannot do is left.
   * @param {boolean} on
   */
  async steady(on) {
    const track = this.#track();
    if (!track) return;
    const can = canOf(this.stream), wanted = on ? "manual" : "continuous";
    /** @type {Record<string, string | boolean>} */
    const set = {};
    for (const mode of /** @type {const} */ (["exposureMode", "whiteBalanceMode", "focusMode"])) if (can[mode]?.includes(wanted)) set[mode] = wanted;
    if (Object.keys(set).length === 0) return;
    if (this.light === "on") set.torch = true; // what is not asked for again would go off
    await track.applyConstraints({ advanced: [/** @type {MediaTrackConstraintSet} */ (set)] }).catch(() => {});
  }

  /** Waits for the next picture; an old browser has no better sign of one than that the video's time has moved. */
  #next() {
    if (this.over) return;
    const { video, stream } = this;
    const took = () => this.stream === stream && !this.over;
    if ("requestVideoFrameCallback" in video) {
      video.requestVideoFrameCallback((now, told) => {
        if (!took()) return;
        this.#read(now, told);
        this.#next();
      });
      return;
    }
    const old = /** @type {HTMLVideoElement} */ (video);
    const before = old.currentTime;
    /** @param {number} now */
    const look = (now) => {
      if (!took()) return;
      if (old.currentTime === before) return void requestAnimationFrame(look);
      this.#read(now, null);
      this.#next();
    };
    requestAnimationFrame(look);
  }

  /** @param {number} now @param {VideoFrameCallbackMetadata | null} told */
  #read(now, told) {
    const { videoWidth: w, videoHeight: h } = this.video;
    if (w === 0 || h === 0) return;
    this.clock ||= told?.captureTime !== undefined ? "capture" : told ? "media" : "now";
    const at = this.clock === "capture" ? told?.captureTime : this.clock === "media" ? (told?.mediaTime ?? NaN) * 1000 : now;
    if (at === undefined || Number.isNaN(at)) return; // a picture without the time that the others have
    this.first ??= at;
    const side = Math.min(w, h) * MIDDLE;
    this.context.drawImage(this.video, (w - side) / 2, (h - side) / 2, side, side, 0, 0, SIDE, SIDE);
    const { data } = this.context.getImageData(0, 0, SIDE, SIDE);
    let red = 0, green = 0, blue = 0;
    for (let k = 0; k < data.length; k += 4) {
      red += data[k];
      green += data[k + 1];
      blue += data[k + 2];
    }
    const n = data.length / 4;
    this.coloured({ at_s: (at - this.first) / 1000, red: red / n, green: green / n, blue: blue / n });
  }

  #stop() {
    this.video.srcObject = null;
    for (const track of this.stream?.getTracks() ?? []) track.stop();
    this.stream = null;
    this.clock = "";
    this.first = null;
  }

  /** The camera goes off, its light with it, and the last picture is wiped out. */
  close() {
    this.over = true;
    this.#stop();
    this.context.fillRect(0, 0, SIDE, SIDE);
  }
}

/** @param {MediaStream | null} stream @returns {Can} */
const canOf = (stream) => stream?.getVideoTracks()[0]?.getCapabilities?.() ?? {};
