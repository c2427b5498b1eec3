/**
 * Maps of readings, held on this device for when the server is out of reach: in the browser's own store of answers,
 * which pages have where they can be opened without network at all. A reading is never changed, so what is held is
 * not asked for again.
 */

/** Not `dentwright-…`: those are the service worker's, which clears them with every new build. */
const SHELF = 'maps-of-readings';
/** Files held, the earliest of them let go of: ten readings of three maps, about 1 MB a reading. Ours. */
const MOST = 30;

/** The bytes behind an address: held ones, else what `ask` gives. Fails as `ask` does. */
export async function held(address: string, ask: () => Promise<ArrayBuffer>): Promise<ArrayBuffer> {
  const shelf = typeof caches === 'undefined' ? null : await caches.open(SHELF).catch(() => null);
  const there = await shelf?.match(address).catch(() => undefined);
  if (there) return there.arrayBuffer();
  const bytes = await ask();
  if (shelf) void hold(shelf, address, bytes).catch(() => {}); // a full device: then they are asked for again
  return bytes;
}

async function hold(shelf: Cache, address: string, bytes: ArrayBuffer): Promise<void> {
  await shelf.put(address, new Response(bytes));
  const all = await shelf.keys();
  await Promise.all(all.slice(0, Math.max(0, all.length - MOST)).map((one) => shelf.delete(one)));
}
