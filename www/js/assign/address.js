// @ts-check
// Addresses that a link can begin with.

/**
 * An address that a link can begin with, without what may stand behind it; null where it is none.
 * @param {string} text
 */
export function checkedAddress(text) {
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
export const isOwnMachine = (address) => /^(localhost|.*\.localhost|127(\.\d+){3}|\[::1\]|0\.0\.0\.0)$/.test(new URL(address).hostname);
