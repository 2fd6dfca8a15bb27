// @ts-check
// Starts the page: texts, theme, core, scenarios; then opens what the address asks for.

import { loadCore } from "./core.js";
import { byId } from "./dom.js";
import { takeDrops } from "./files.js";
import { nothingComes, report, shows } from "./frame.js";
import { lab } from "./lab.js";
import { chooseLanguage } from "./language.js";
import { followAddress } from "./navigation.js";
import { keepOffline } from "./offline.js";
import { openRecording } from "./open/recording.js";
import { packed } from "./packed.js";
import { readRoute } from "./route.js";
import { openAddress } from "./router.js";
import { loadScenarios, scenarioWords } from "./scenarios.js";
import { openJournal } from "./store.js";
import { fillTexts, loadTexts } from "./text.js";
import { startTheme } from "./theme.js";
import { makeViews } from "./views.js";
import { previewed, startAsAsked } from "./who.js";
import { makeTools } from "./tools.js";

takeDrops(openRecording);
addEventListener("error", (event) => report(event.error ?? event.message));
addEventListener("unhandledrejection", (event) => report(event.reason));
addEventListener("pagehide", () => {
  // What is typed stands before the page goes, also in the field that still has the focus.
  document.activeElement?.dispatchEvent(new Event("change"));
  lab()?.session.saveNow();
});

startAsAsked();
const core = loadCore();
const index = loadScenarios();
const texts = loadTexts(chooseLanguage());
const journal = openJournal();
const told = scenarioWords();
for (const early of [core, index, told]) early.catch(() => {}); // told below, once there are words
startTheme();
await texts;
fillTexts(document);
makeTools();
makeViews(byId("views"));
try {
  const scenarios = await index;
  const { scenario, watch } = readRoute();
  const wanted = scenario ?? watch;
  for (const one of scenarios) if (!wanted || one.id === wanted) one.load().catch(() => {}); // on its way while the core compiles
  await Promise.all([core, told, journal]);
  await followAddress(openAddress);
  if (!packed && !previewed) keepOffline({ note: byId("kept"), free: () => shows("start") && !document.querySelector("dialog[open]") });
} catch (error) {
  nothingComes();
  report(error);
}
