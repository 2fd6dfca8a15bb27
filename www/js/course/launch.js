// @ts-check
// How a site of cmi5 (Quartz, 1st edition) opens this page: what its address tells (section 8.1), the one token that it gives for a visit
// (8.2), and the way to its records (xAPI 1.0.3). A client of our own, because a visit carries no packages and this is all that is needed.

import { ofTab, toTab } from "../device.js";

const VERSION = "1.0.3", WAIT_MS = 20_000;
const VISIT = "launch"; // in this tab: the token can be asked for once, and a page that is loaded anew goes on with it

/**
 * @typedef {{ endpoint: string, fetch: string, actor: string, student: string, registration: string, activity: string }} Launch
 * fetch: the address that names this visit; began: the statement of its beginning, which may have to be sent twice; over: it has ended.
 * @typedef {{ fetch: string, token: string, began: { id: string, at: string } | null, over: boolean }} Visit
 */

/** A visit that cannot begin; its message is one of LAUNCH_TROUBLES. */
export class LaunchError extends Error {}

/** @param {string} text */
function webAddress(text) {
  try {
    const url = new URL(text);
    return ["https:", "http:"].includes(url.protocol) ? url : null;
  } catch {
    return null;
  }
}

/**
 * What the address tells of the launch; null where it tells of none.
 * @param {string} search @returns {Launch | null}
 */
export function readLaunch(search) {
  const told = new URLSearchParams(search);
  const [endpoint, fetch, actor, registration, activity] = ["endpoint", "fetch", "actor", "registration", "activityId"].map((name) => told.get(name) ?? "");
  if (!endpoint && !fetch) return null;
  let student = "";
  try {
    student = String(JSON.parse(actor).account.name);
  } catch { /* told below */ }
  if (![endpoint, fetch].every(webAddress) || !student || !registration || !activity) throw new LaunchError("broken");
  return { endpoint: endpoint.endsWith("/") ? endpoint : `${endpoint}/`, fetch, actor, student, registration, activity };
}

/** Where a launch's records are, as a reader knows it. @param {Launch} launch */
export const hostOf = ({ endpoint }) => new URL(endpoint).host;

/**
 * The address to go to after a visit; "" for none that is one of the web.
 * @param {unknown} told
 */
export const wayBack = (told) => webAddress(String(told ?? ""))?.href ?? "";

/**
 * From now on the page reaches this launch's own places and no others: a second policy holds beside the first, which has to allow more,
 * because nobody knows these places when the package is made.
 * @param {Launch} launch
 */
export function allowOnly({ endpoint, fetch }) {
  const places = [...new Set([endpoint, fetch].map((one) => new URL(one).origin))];
  const policy = document.createElement("meta");
  policy.httpEquiv = "Content-Security-Policy";
  policy.content = `connect-src 'self' ${places.join(" ")}`;
  document.head.append(policy);
}

/** @param {Visit} visit */
export const keepVisit = (visit) => toTab(VISIT, JSON.stringify(visit));

/**
 * This tab's visit by a launch: as it stands, or with a fresh token.
 * @param {Launch} launch @returns {Promise<Visit>}
 */
export async function visitOf({ fetch: address }) {
  /** @type {Visit | null} */
  const there = JSON.parse(ofTab(VISIT) || "null");
  if (there?.fetch === address) {
    if (there.over) throw new LaunchError("over");
    return there;
  }
  let answer;
  try {
    answer = await fetch(address, { method: "POST", signal: AbortSignal.timeout(WAIT_MS) }).then((one) => one.json());
  } catch {
    throw new LaunchError("unreachable");
  }
  const token = answer?.["auth-token"];
  if (typeof token !== "string" || !token) throw new LaunchError(String(answer?.["error-code"]) === "1" ? "used" : "refused");
  const visit = { fetch: address, token, began: null, over: false };
  keepVisit(visit);
  return visit;
}

/** The site's records, for one launch. */
export class Records {
  /** @param {Launch} launch @param {string} token */
  constructor(launch, token) {
    this.launch = launch;
    this.token = token;
  }

  /**
   * Asks once. status: of the answer, 0 where none came; value: its JSON, if it has any.
   * @param {string} method @param {string} what @param {Record<string, string>} which @param {unknown} [body] @param {boolean} [leaving] whether the page is on its way out
   * @returns {Promise<{ status: number, value: any }>}
   */
  async #ask(method, what, which, body, leaving = false) {
    const url = new URL(what, this.launch.endpoint);
    for (const [name, value] of Object.entries(which)) url.searchParams.set(name, value);
    /** @type {Record<string, string>} */
    const headers = { authorization: `Basic ${this.token}`, "x-experience-api-version": VERSION };
    if (body !== undefined) headers["content-type"] = "application/json";
    try {
      const answer = await fetch(url, { method, headers, body: body === undefined ? undefined : JSON.stringify(body), keepalive: leaving, cache: "no-store", signal: AbortSignal.timeout(WAIT_MS) });
      return { status: answer.status, value: await answer.json().catch(() => null) };
    } catch {
      return { status: 0, value: null };
    }
  }

  /** @param {string} name */
  #place(name) {
    const { actor, registration, activity } = this.launch;
    return { stateId: name, activityId: activity, agent: actor, registration };
  }

  /**
   * A document that the site keeps for this unit and registration.
   * @param {string} name
   */
  state(name) {
    return this.#ask("GET", "activities/state", this.#place(name));
  }

  /**
   * Puts such a document in place of the one before; the status of the answer.
   * @param {string} name @param {unknown} value @param {boolean} leaving
   */
  async putState(name, value, leaving) {
    return (await this.#ask("PUT", "activities/state", this.#place(name), value, leaving)).status;
  }

  /** What the student asks of every page; null where nothing is said. */
  async preferences() {
    const { status, value } = await this.#ask("GET", "agents/profile", { profileId: "cmi5LearnerPreferences", agent: this.launch.actor });
    return status === 200 ? value : null;
  }

  /**
   * Puts statements into the records; the status of the answer.
   * @param {unknown[]} statements @param {boolean} leaving
   */
  async tell(statements, leaving) {
    return (await this.#ask("POST", "statements", {}, statements, leaving)).status;
  }
}
