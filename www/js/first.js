// @ts-check
// Runs before main.js, as soon as it is there: asks for the words in the reader's language while the rest is on its way.

import { chooseLanguage } from "./language.js";
import { loadTexts } from "./text.js";

loadTexts(chooseLanguage()).catch(() => {}); // main.js waits for the same words, and tells
