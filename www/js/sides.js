// The screens beside the bench, each brought when it is opened: the card index of faults, the skill map, the notebook, a report.

const cards = () => import("./faults/cards.js");

/**
 * By name: the key of its title, open(root, turn, ways) which fills its section, and for one that has places to turn to
 * turn(root, turn). ways: {inLab, goBack(), allLoaded()}.
 */
export const SIDES = {
  faults: { title: "faults-title", open: async (root, _turn, ways) => (await cards()).showFaults(root, ways), turn: async (root, turn) => (await cards()).turnToCard(root, turn) },
  skills: { title: "side-skills", open: async (root, _turn, ways) => (await import("./skills/index.js")).showSkills(root, { ...ways, scenarios: await ways.allLoaded() }) },
  notebook: { title: "side-notebook", open: async (root, _turn, ways) => (await import("./notebook/index.js")).showNotebook(root, ways) },
  report: { title: "side-report", open: async (root, turn, ways) => (await import("./notebook/report.js")).showReport(root, turn, ways) },
};
