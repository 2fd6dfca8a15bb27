// @ts-check
// Opening a recording from its files; a bad one is told and costs nothing.

import { byId } from "../dom.js";
import { calm, report } from "../frame.js";
import { chooseFiles, readRecording } from "../files.js";
import { lab, stand } from "../lab.js";
import { go, goOn, Left } from "../navigation.js";
import { t } from "../text.js";

/** @param {File[]} files */
export const openRecording = (files) => go(async (navigation) => {
  let bench;
  try {
    bench = await readRecording(files, navigation);
  } catch (error) {
    if (error instanceof Left) throw error;
    if (navigation.instead) await goOn();
    report(error);
    if (lab()) calm(`${byId("calm").textContent} ${t("error-file_left")}`);
    return;
  }
  if (!bench) return void (navigation.instead && goOn());
  navigation.write(location.pathname); // it has no address
  stand(bench);
});

export const chooseRecording = () => chooseFiles(openRecording);
