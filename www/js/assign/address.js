// @ts-check
// Where the page is for students: the address that a link begins with, and the link as a picture.

import { pictureOf } from "../desk.js";
import { forget, keep, recall } from "../device.js";
import { attr, h, newId, words } from "../dom.js";
import { pageAddress } from "../hand/link.js";
import { t } from "../text.js";

/**
 * An address that a link can begin with, without what may stand behind it; null where it is none.
 * @param {string} text
 */
function checkedAddress(text) {
  try {
    const { protocol, origin, pathname } = new URL(text.trim());
    return ["http:", "https:"].includes(protocol) ? origin + pathname : null;
  } catch {
    return null;
  }
}

/**
 * Does this address lead back to the machine that asks for it?
 * @param {string} address
 */
const isOwnMachine = (address) => /^(localhost|.*\.localhost|127(\.\d+){3}|\[::1\]|0\.0\.0\.0)$/.test(new URL(address).hostname);

const KEY = "address"; // typed once, it holds for every link, picture and sheet that this device makes

/** The address that was typed here last, else this page's own. */
const lastAddress = () => {
  const kept = recall(KEY);
  return (typeof kept === "string" && checkedAddress(kept)) || pageAddress();
};

/** The field for it: says what is amiss with what stands there. */
export class AddressField {
  /** @param {() => unknown} changed */
  constructor(changed) {
    const id = newId("at");
    /** @type {HTMLInputElement} */
    this.input = h("input", { id, class: "txt", type: "url", inputmode: "url", autocomplete: "off", spellcheck: "false", value: lastAddress(), oninput: () => this.typed(changed) });
    this.told = h("p", { class: "problem", role: "status" });
    this.el = h("div", { class: "fld out-at" }, h("label", { for: id }, t("assign-at")), this.input, this.told);
  }

  /** Keeps what is an address, and forgets it where it is this page's own. @param {() => unknown} changed */
  typed(changed) {
    const { address } = this;
    if (address === pageAddress()) forget(KEY);
    else if (address) keep(KEY, address);
    changed();
  }

  /** What stands there; null where it is no address. */
  get address() {
    return checkedAddress(this.input.value);
  }

  /** Looks at what stands there and says what is amiss; the address for links, this page's own where there is none. */
  look() {
    const { address } = this;
    words(this.told, address === null ? t("assign-at_wrong") : isOwnMachine(address) ? t("assign-at_here") : "");
    attr(this.input, "aria-invalid", address === null ? "true" : null);
    return address ?? pageAddress();
  }
}

/**
 * A link as a picture that a phone reads, its text and how it stands on the page; null where the link is too long for one.
 * @param {string} link
 */
export function linkPicture(link) {
  const text = pictureOf(link);
  if (!text) return null;
  const el = document.importNode(new DOMParser().parseFromString(text, "image/svg+xml").documentElement, true);
  attr(el, "role", "img");
  attr(el, "aria-label", t("assign-qr"));
  return { text, el };
}
