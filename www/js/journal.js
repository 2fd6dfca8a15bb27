// A second copy of every attempt, in the browser's database. localStorage is at hand at once, but a browser writes it to the
// disk when it likes, up to a minute later; what a finished transaction wrote is with the system even if the browser is killed.

const NAME = "dicrotic", STORE = "attempts";
let opened = null; // a promise of the database

function open() {
  opened ??= new Promise((done, fail) => {
    const asked = indexedDB.open(NAME, 1);
    asked.onupgradeneeded = () => asked.result.createObjectStore(STORE);
    asked.onsuccess = () => {
      asked.result.onversionchange = () => asked.result.close(); // somebody clears the device: do not stand in the way
      asked.result.onclose = () => (opened = null);
      done(asked.result);
    };
    asked.onerror = () => fail(asked.error);
    asked.onblocked = () => fail(new Error("blocked"));
  }).catch((error) => {
    opened = null;
    throw error;
  });
  return opened;
}

/** Runs one transaction; resolves once it is complete to what its request gave. */
async function transact(mode, ask) {
  const database = await open();
  return new Promise((done, fail) => {
    const transaction = database.transaction(STORE, mode);
    const request = ask(transaction.objectStore(STORE));
    transaction.oncomplete = () => done(request.result);
    transaction.onabort = () => fail(transaction.error);
    transaction.onerror = () => fail(transaction.error);
  });
}

/** Writes a value; rejects when the device does not allow it. */
export const writeDown = (key, value) => transact("readwrite", (store) => store.put(value, key));

/** Takes a value out. */
export const strike = (key) => transact("readwrite", (store) => store.delete(key)).catch(() => {});

/** Everything that is written down, by key; empty where there is no database. */
export async function readAll() {
  const all = new Map();
  try {
    await transact("readonly", (store) => {
      const cursor = store.openCursor();
      cursor.onsuccess = () => {
        if (!cursor.result) return;
        all.set(cursor.result.key, cursor.result.value);
        cursor.result.continue();
      };
      return cursor;
    });
  } catch { /* switched off: there is nothing */ }
  return all;
}
