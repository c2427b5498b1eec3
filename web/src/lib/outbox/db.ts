/**
 * What this device holds by itself, in IndexedDB: what was entered and is not sent yet, and what was last seen of the
 * shop. A write of the outbox is done when it is on the disk, so that it survives the end of the browser at any moment.
 */
export type Shelf = 'outbox' | 'seen' | 'clash';

const NAME = 'dentwright';
const VERSION = 1;
let opening: Promise<IDBDatabase | null> | null = null;
/** Where the browser gives no database: kept until the page is closed. */
const without: Record<Shelf, Map<IDBValidKey, unknown>> = { outbox: new Map(), seen: new Map(), clash: new Map() };
let next = 1;

function open(): Promise<IDBDatabase | null> {
  opening ??= new Promise((resolve) => {
    try {
      const request = indexedDB.open(NAME, VERSION);
      request.onupgradeneeded = () => {
        request.result.createObjectStore('outbox', { keyPath: 'n', autoIncrement: true });
        request.result.createObjectStore('seen');
        request.result.createObjectStore('clash', { keyPath: 'id' });
      };
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => resolve(null);
      request.onblocked = () => resolve(null);
    } catch {
      resolve(null);
    }
  });
  return opening;
}

/** Puts a value on a shelf and gives its key when it is on the disk. */
export async function put(shelf: Shelf, value: unknown, key?: IDBValidKey): Promise<IDBValidKey> {
  const db = await open();
  if (!db) return putWithout(shelf, value as { n?: number; id?: string }, key);
  return new Promise((resolve, reject) => {
    const change = db.transaction(shelf, 'readwrite', { durability: shelf === 'seen' ? 'relaxed' : 'strict' });
    const request = change.objectStore(shelf).put(value, key);
    change.oncomplete = () => resolve(request.result);
    change.onerror = change.onabort = () => reject(change.error);
  });
}

function putWithout(shelf: Shelf, value: { n?: number; id?: string }, key?: IDBValidKey): IDBValidKey {
  const own = key ?? (shelf === 'outbox' ? (value.n ?? next++) : value.id!);
  without[shelf].set(own, shelf === 'outbox' ? { ...value, n: own } : value);
  return own;
}

/** Takes values off a shelf, all or none. */
export async function remove(shelf: Shelf, keys: IDBValidKey[]): Promise<void> {
  const db = await open();
  if (!db) return keys.forEach((key) => without[shelf].delete(key));
  await new Promise<void>((resolve, reject) => {
    const change = db.transaction(shelf, 'readwrite', { durability: 'strict' });
    for (const key of keys) change.objectStore(shelf).delete(key);
    change.oncomplete = () => resolve();
    change.onerror = change.onabort = () => reject(change.error);
  });
}

/** Everything on a shelf, in the order of the keys. */
export async function all<T>(shelf: Shelf): Promise<T[]> {
  const db = await open();
  if (!db) return [...without[shelf].values()] as T[];
  return answer(db.transaction(shelf).objectStore(shelf).getAll() as IDBRequest<T[]>);
}

/** One value; undefined where there is none. */
export async function get<T>(shelf: Shelf, key: IDBValidKey): Promise<T | undefined> {
  const db = await open();
  if (!db) return without[shelf].get(key) as T | undefined;
  return answer(db.transaction(shelf).objectStore(shelf).get(key) as IDBRequest<T | undefined>);
}

function answer<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

/** Whether what is kept outlives the page. */
export const lasts = async (): Promise<boolean> => (await open()) !== null;
