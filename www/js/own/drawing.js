// @ts-check
// Where a pulse is felt, drawn in the line of the bench: a wrist with the palm up, a neck from the front. Decoration: what is drawn is
// told in words beside it.

import { s } from "../dom.js";
import { smooth } from "../bench/pen.js";
/** @import { ReadonlyPoint } from '../types/names' */

/** @param {string} d @param {string} [kind] */
const line = (d, kind = "") => s("path", { class: `own-ln ${kind}`, d });

/** @param {readonly ReadonlyPoint[]} points @param {string} fill */
const limb = (points, fill) => {
  const d = smooth(points);
  return [s("path", { class: fill, d }), line(d)];
};

/**
 * A finger that feels, with its nail.
 * @param {readonly ReadonlyPoint[]} points @param {string} nail
 */
const finger = (points, nail) => s("g", {}, limb(points, "own-skin own-skin-2"), line(nail, "is-thin"));

/** The hand with its palm up lies to the right, its thumb at the top; two fingers come from above. */
export function wristDrawing() {
  return s("svg", { class: "own-drawing", viewBox: "0 0 330 190", "aria-hidden": "true", focusable: "false" },
    limb([[-6, 70], [50, 68], [100, 72], [136, 71], [158, 61], [178, 46], [198, 27], [214, 15], [226, 14], [230, 24], [222, 38], [208, 54], [204, 66], [220, 66], [260, 60], [298, 60], [309, 67], [298, 75], [262, 77], [236, 80],
      [270, 78], [312, 79], [322, 87], [311, 95], [270, 95], [238, 96], [270, 97], [304, 101], [313, 109], [302, 116], [266, 113], [234, 112], [258, 116], [280, 122], [287, 130], [277, 135], [250, 131], [220, 128], [198, 134], [170, 136], [146, 129], [124, 123], [90, 123], [44, 128], [-6, 131]], "own-skin"),
    line("M206 68C188 74 176 88 172 104S174 126 178 134M224 98C208 92 196 82 190 74", "is-thin"),
    line("M150 70C156 82 157 108 150 128M143 72C148 84 149 108 143 126", "is-thin"),
    line("M-6 102C40 100 100 99 140 100M-6 109C40 108 96 108 138 109", "is-faint"),
    line("M-6 84C40 83 90 84 118 85C140 85 156 82 170 78", "is-artery"),
    finger([[74, -6], [86, 36], [95, 74], [99, 88], [107, 93], [114, 86], [113, 70], [106, 32], [97, -6]], "M99 76C101 70 109 69 111 75L112 84C110 90 102 90 101 85Z"),
    finger([[102, -6], [112, 34], [117, 72], [121, 87], [129, 92], [136, 85], [134, 69], [131, 30], [125, -6]], "M121 75C123 69 131 68 133 74L134 83C132 89 124 89 123 84Z"));
}

/** Two fingers lie in the groove beside the windpipe, on one side. */
export function neckDrawing() {
  return s("svg", { class: "own-drawing", viewBox: "0 0 330 190", "aria-hidden": "true", focusable: "false" },
    s("path", { class: "own-skin", d: "M112 44C114 84 114 110 108 132C98 150 60 160 -6 172V196H336V172C270 160 232 150 222 132C216 110 216 84 218 44Z" }),
    line("M112 50C114 84 114 110 108 132C98 150 60 160 -6 172M218 50C216 84 216 110 222 132C232 150 270 160 336 172"),
    s("path", { class: "own-skin", d: "M92 -6C92 22 98 40 114 56C132 72 148 82 165 82S198 72 216 56C232 40 238 22 238 -6Z" }),
    line("M92 -6C92 22 98 40 114 56C132 72 148 82 165 82S198 72 216 56C232 40 238 22 238 -6"),
    line("M146 12C154 18 176 18 184 12M154 25C160 28 170 28 176 25", "is-thin"),
    line("M155 92C154 116 154 140 157 160M175 92C176 116 176 140 173 160M155 106Q165 111 175 106M155 120Q165 125 175 120M155 134Q165 139 175 134M156 148Q165 153 174 148", "is-faint"),
    line("M158 168Q165 174 172 168M154 170C130 164 100 164 66 176M176 170C200 164 230 164 264 176", "is-thin"),
    line("M136 82C138 108 138 134 142 162M194 82C192 108 192 134 188 162", "is-artery"),
    finger([[-6, 76], [50, 87], [104, 94], [130, 97], [141, 105], [134, 113], [106, 114], [46, 111], [-6, 104]], "M118 99C113 102 113 109 118 111L130 111C136 109 136 102 130 100Z"),
    finger([[-6, 108], [46, 114], [104, 117], [132, 118], [143, 126], [136, 134], [106, 136], [46, 138], [-6, 136]], "M120 121C115 123 115 131 120 133L132 133C138 131 138 123 132 121Z"),
    line("M203 104l20 20M223 104l-20 20", "is-cross"));
}
