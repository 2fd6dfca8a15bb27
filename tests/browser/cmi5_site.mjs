// A course site of cmi5 for the tests: launches, tokens and records, and a judge of each statement that comes in. What a rule forbids is
// refused and written down. The rules are those of cmi5, Quartz, 1st edition (sections in brackets), and of xAPI 1.0.3, by another's hand:
// @learninglocker/xapi-validation.
import { createRequire } from "node:module";
import { randomUUID } from "node:crypto";
import { isDeepStrictEqual } from "node:util";

const validate = createRequire(import.meta.url)("@learninglocker/xapi-validation").default;

const CMI5 = "https://w3id.org/xapi/cmi5/context/", ADL = "http://adlnet.gov/expapi/verbs/";
const SESSION = `${CMI5}extensions/sessionid`, MASTERY = `${CMI5}extensions/masteryscore`;
/** Where the site's records are: another place than where the package lies. Nothing is there but what a test answers. */
export const ORIGIN = "https://records.example";

const isUuid = (text) => /^[0-9a-f]{8}-[0-9a-f]{4}-[1-8][0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/i.test(text ?? "");
const idsOf = (statement, list) => (statement.context?.contextActivities?.[list] ?? []).map(({ id }) => id);
export const verbOf = (statement) => statement.verb.id.split("/").at(-1);
/** Whether cmi5's rules for verbs hold for it (7.1.3). */
export const isDefined = (statement) => idsOf(statement, "category").includes(`${CMI5}categories/cmi5`);
/** Whether everything of one value stands in another. */
const within = (small, large) => (Array.isArray(small) ? small.every((one) => large?.some((other) => within(one, other)))
  : typeof small === "object" && small ? Object.entries(small).every(([key, value]) => within(value, large?.[key])) : small === large);

export class Cmi5Host {
  constructor({ mastery = 0.8, moveOn = "Passed", mode = "Normal", returnURL, preferences = null, publisher = "urn:uuid:00000000-0000-8000-8000-000000000001" } = {}) {
    Object.assign(this, { mastery, moveOn, mode, returnURL, preferences, publisher });
    this.activity = `${ORIGIN}/units/${randomUUID()}`;
    this.sessions = [];
    this.statements = [];
    this.refused = []; // why, and what
    this.documents = new Map();
    this.asked = []; // every request, as method and place
    this.down = false; // whether nothing answers
  }

  /** A student's enrolment: nothing of an earlier one belongs to it. */
  register(student = "s-0042") {
    return { id: randomUUID(), actor: { objectType: "Agent", account: { homePage: ORIGIN, name: student } } };
  }

  /** What a launch adds to the address of the unit (8.1). What was not ended before is abandoned. */
  launch(registration) {
    for (const one of this.sessions) if (one.registration === registration && !one.ended) one.ended = "abandoned";
    const session = { id: `session ${randomUUID()}`, registration, token: Buffer.from(randomUUID()).toString("base64"), given: false, ended: "", own: [] };
    this.sessions.push(session);
    this.documents.set(this.#key("LMS.LaunchData", registration), {
      contextTemplate: { contextActivities: { grouping: [{ id: this.publisher }] }, extensions: { [SESSION]: session.id } },
      launchMode: this.mode, masteryScore: this.mastery, moveOn: this.moveOn, launchParameters: "rest-pulse", ...(this.returnURL && { returnURL: this.returnURL }),
    });
    return `?${new URLSearchParams({ endpoint: `${ORIGIN}/xapi`, fetch: `${ORIGIN}/token?of=${this.sessions.length - 1}`, actor: JSON.stringify(registration.actor), registration: registration.id, activityId: this.activity })}`;
  }

  /** Lets the site answer whatever a device asks of its place. */
  serve(context) {
    return context.route(`${ORIGIN}/**`, async (route) => {
      if (this.down) return route.abort("connectionfailed");
      const request = route.request();
      const { status, value } = this.answer(request.method(), new URL(request.url()), await request.allHeaders(), request.postData());
      return route.fulfill({ status, headers: { "access-control-allow-origin": "*", "access-control-allow-headers": "*", "access-control-allow-methods": "*", "content-type": "application/json" }, body: value === undefined ? "" : JSON.stringify(value) });
    });
  }

  /** The statements that cmi5 defines, of one visit or of all. */
  defined(session = null) {
    return this.statements.filter((one) => isDefined(one) && (!session || one.context.extensions[SESSION] === session.id));
  }
  document(registration, name = "dicrotic.attempt") {
    return this.documents.get(this.#key(name, registration));
  }
  #key(name, { id, actor }) {
    return JSON.stringify([name, this.activity, id, actor.account]);
  }

  answer(method, url, headers, body) {
    const place = url.pathname;
    this.asked.push(`${method} ${place}`);
    if (method === "OPTIONS") return { status: 204 };
    if (place === "/token") return this.#token(method, this.sessions[Number(url.searchParams.get("of"))]);
    const session = this.sessions.find(({ token, given }) => given && headers.authorization === `Basic ${token}`);
    if (!session) return this.#no(401, "no such token");
    if (headers["x-experience-api-version"] !== "1.0.3") return this.#no(400, "X-Experience-API-Version");
    const query = Object.fromEntries(url.searchParams);
    if (place === "/xapi/statements" && ["POST", "PUT"].includes(method)) return this.#take([JSON.parse(body)].flat(), session);
    const agent = JSON.parse(query.agent ?? "null");
    if (!isDeepStrictEqual(agent, session.registration.actor)) return this.#no(400, "agent", query);
    if (place === "/xapi/agents/profile" && method === "GET") {
      if (query.profileId !== "cmi5LearnerPreferences") return this.#no(400, "profileId", query);
      session.preferred = true;
      return this.preferences ? { status: 200, value: this.preferences } : { status: 404 };
    }
    if (place === "/xapi/activities/state") return this.#state(method, query, body, session);
    return this.#no(404, "no such place", { method, place });
  }

  /** The token of a visit, once (8.2). */
  #token(method, session) {
    if (method !== "POST") return this.#no(405, "the token is asked for by POST");
    if (session.given) return { status: 200, value: { "error-code": "1", "error-text": "The token was given before." } };
    session.given = true;
    return { status: 200, value: { "auth-token": session.token } };
  }

  /** The documents of a unit (10). */
  #state(method, query, body, session) {
    const { registration } = session;
    if (query.activityId !== this.activity || query.registration !== registration.id) return this.#no(400, "a state of something else", query);
    const key = this.#key(query.stateId, registration);
    if (method === "GET") {
      session.launched ||= query.stateId === "LMS.LaunchData";
      return this.documents.has(key) ? { status: 200, value: this.documents.get(key) } : { status: 404 };
    }
    if (session.ended) return this.#no(403, "a state of a visit that is over");
    if (query.stateId === "LMS.LaunchData") return this.#no(403, "the launch data are the site's own");
    if (method !== "PUT") return this.#no(405, method);
    this.documents.set(key, JSON.parse(body));
    return { status: 204 };
  }

  /** Statements of one request: all of them, or none. */
  #take(statements, session) {
    const there = new Map(this.statements.map((one) => [one.id, one]));
    const fresh = statements.filter(({ id }) => !there.has(id));
    for (const one of statements) if (there.has(one.id) && !isDeepStrictEqual(one, there.get(one.id))) return this.#no(409, "another statement of that id", one);
    const own = [...session.own];
    for (const one of fresh) {
      const why = this.#against(one, session, own);
      if (why) return this.#no(403, why, one);
      own.push(one);
    }
    session.own = own;
    this.statements.push(...fresh);
    if (own.some((one) => isDefined(one) && verbOf(one) === "terminated")) session.ended = "terminated";
    return { status: 200, value: statements.map(({ id }) => id) };
  }

  /** Why a statement may not come after those of its visit; "" if it may. */
  #against(one, session, own) {
    const { registration } = session, verb = verbOf(one), { result = {} } = one;
    const wrong = validate(one);
    if (wrong.length > 0) return `xAPI: ${wrong.map((each) => `${each.constructor.name} ${JSON.stringify(each)}`)}`;
    if (!isUuid(one.id)) return "9.1: the id";
    if (!/Z$/.test(one.timestamp ?? "")) return "9.7: the time is not in UTC";
    if (!isDeepStrictEqual(one.actor, registration.actor)) return "8.1: the actor is another";
    if (one.context?.registration !== registration.id) return "9.6.1: the registration is another";
    const template = this.document(registration, "LMS.LaunchData").contextTemplate;
    if (one.context.extensions?.[SESSION] !== session.id) return "9.6.3.1: the session is another";
    if (!within(template, one.context)) return "10: something of the context's template is missing";
    if (session.ended) return `9.3: the visit is ${session.ended}`;
    if (!session.launched || !session.preferred) return "10, 11: the launch data and the preferences are asked for first";
    const defined = isDefined(one), before = own.filter(isDefined).map(verbOf), all = this.statements.concat(own).filter((each) => isDefined(each) && each.context.registration === registration.id).map(verbOf);
    if (own.length === 0 && !(defined && verb === "initialized")) return "9.3: Initialized comes first";
    if (own.some(({ timestamp }) => verb === "terminated" && defined && timestamp > one.timestamp) || (own[0] && one.timestamp < own[0].timestamp)) return "9.3: the times do not lie between Initialized and Terminated";
    const moves = idsOf(one, "category").includes(`${CMI5}categories/moveon`);
    if (!defined) return moves ? "9.6.2.2: the moveOn category" : "";
    if (!["initialized", "completed", "passed", "failed", "terminated"].includes(verb) || one.verb.id !== ADL + verb) return "9.3: no verb of cmi5 for a unit";
    if (one.object.id !== this.activity) return "9.4: the object is not the unit";
    if (before.includes(verb)) return `9.3: ${verb} twice in a visit`;
    if (["passed", "failed"].includes(verb) && ["passed", "failed"].some((each) => before.includes(each))) return "9.3: passed and failed in a visit";
    if (["completed", "passed"].includes(verb) && all.includes(verb)) return `9.3: ${verb} twice in a registration`;
    if (verb === "failed" && all.includes("passed")) return "9.3: failed after passed";
    if (this.mode !== "Normal" && !["initialized", "terminated"].includes(verb)) return `10: ${verb} in the mode ${this.mode}`;
    const judged = ["passed", "failed"].includes(verb);
    if (!isDeepStrictEqual(result.success, judged ? verb === "passed" : undefined)) return "9.5.2: success";
    if (!isDeepStrictEqual(result.completion, verb === "completed" ? true : undefined)) return "9.5.3: completion";
    if (moves !== (judged || verb === "completed")) return "9.6.2.2: the moveOn category";
    if (verb !== "initialized" && !/^P/.test(result.duration ?? "")) return "9.5.4: the duration";
    if (result.score && !judged) return "9.5.1: a score";
    if (judged && one.context.extensions[MASTERY] !== this.mastery) return "9.6.3.2: the score that passes";
    if (judged && result.score && result.score.scaled >= this.mastery !== (verb === "passed")) return "9.3.4: the score contradicts the word";
    return "";
  }

  #no(status, why, what) {
    this.refused.push({ status, why, what });
    return { status, value: { error: why } };
  }
}
