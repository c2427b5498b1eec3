import { readingFile, readingFileUrl } from '../api/client';
import { held } from './held';
import { readByteMap, readFloatMap, type NpyMap } from './npy';

/** The maps of a reading that the screen needs. */
export interface Maps {
  deviation: NpyMap<Float32Array>;
  sigma: NpyMap<Float32Array>;
  unread: NpyMap<Uint8Array>;
}

/** Asked for once: they are there without network afterwards. */
export async function loadMaps(reading: string): Promise<Maps> {
  const load = (name: string) => held(readingFileUrl(reading, name), () => readingFile(reading, name));
  const [deviation, sigma, unread] = await Promise.all(['deviation.npy', 'sigma.npy', 'unread.npy'].map(load));
  return { deviation: readFloatMap(deviation!), sigma: readFloatMap(sigma!), unread: readByteMap(unread!) };
}

/** The maps that the mirror is made of. */
export async function loadShape(reading: string): Promise<{ height: NpyMap<Float32Array>; deviation: NpyMap<Float32Array> }> {
  const [height, deviation] = await Promise.all(['height.npy', 'deviation.npy'].map((name) => readingFile(reading, name)));
  return { height: readFloatMap(height!), deviation: readFloatMap(deviation!) };
}
