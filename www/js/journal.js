// @ts-check
// A second copy of every attempt, in the browser's database. localStorage is at hand at once, but a browser writes it to the
// disk when it likes, up to a minute later; what a finished transaction wrote is with the system even if the browser is killed.

import { DATABASE, livesInPage } from "./device.js";

const STORE = "attempts";
/** @type {Promise<IDBDatabase> | null} */
let opened = null;

function open() {
  const coming = opened ?? /** @type {Promise<IDBDatabase>} */ (new Promise((done, fail) => {
    const asked = indexedDB.open(DATABASE, 1);
    asked.onupgradeneeded = () => asked.result.createObjectStore(STORE);
    asked.onsuccess = () => {
      asked.result.onversionchange = () => asked.result.close(); // somebody clears the device: do not stand in the way
      asked.result.onclose = () => (opened = null);
      done(asked.result);
    };
    asked.onerror = () => fail(asked.error);
    asked.onblocked = () => fail(new Error("blocked"));
  })).catch((error) => {
    opened = null;
    throw error;
  });
  opened = coming;
  return coming;
}

/**
 * Runs one transaction; resolves once it is complete to what its request gave.
 * @template T @param {IDBTransactionMode} mode @param {(store: IDBObjectStore) => IDBRequest<T>} ask
 */
async function transact(mode, ask) {
  const database = await open();
  return /** @type {Promise<T>} */ (new Promise((done, fail) => {
    const transaction = database.transaction(STORE, mode);
    const request = ask(transaction.objectStore(STORE));
    transaction.oncomplete = () => done(request.result);
    transaction.onabort = () => fail(transaction.error);
    transaction.onerror = () => fail(transaction.error);
  }));
}

/**
 * Writes a value; rejects when the device does not allow it.
 * @param {string} key @param {unknown} value
 */
export const writeDown = async (key, value) => (livesInPage(key) ? undefined : transact("readwrite", (store) => store.put(value, key)));

/**
 * Takes a value out.
 * @param {string} key
 */
export const strike = async (key) => (livesInPage(key) ? undefined : transact("readwrite", (store) => store.delete(key)).catch(() => {}));

/** Takes everything out. */
export const strikeAll = () => transact("readwrite", (store) => store.clear()).catch(() => {});

/** Everything that is written down, by key; empty where there is no database. */
export async function readAll() {
  /** @type {Map<string, unknown>} */
  const all = new Map();
  try {
    await transact("readonly", (store) => {
      const cursor = store.openCursor();
      cursor.onsuccess = () => {
        if (!cursor.result) return;
        const key = String(cursor.result.key);
        if (!livesInPage(key)) all.set(key, cursor.result.value);
        cursor.result.continue();
      };
      return cursor;
    });
  } catch { /* switched off: there is nothing */ }
  return all;
}
