// @ts-check
// What a file is called while student IDs are hidden: course sites put them into the names of what is handed in.

import { t } from "../text.js";
import { state } from "./state.js";

/** A scenario's or a course's file is the instructor's own, and what was pasted has no name, nor has a link beside codes. @param {string} file */
const isOwn = (file) => /\.toml$/i.test(file) || file.startsWith(t("class-pasted")) || file === t("class-link_beside");

/**
 * A file as it may be shown: by its name, or by its place (from 0) among those that stand beside it.
 * @param {string} file @param {number} k
 */
export const fileName = (file, k) => (state.view.names || isOwn(file) ? file : t("class-file", { n: k + 1 }));

/** Whether names are hidden among these. @param {string[]} files */
export const hidesSome = (files) => !state.view.names && !files.every(isOwn);
