import { api, changeFile, readingFile } from '../api/client';
import type { Change } from '../api/types';
import type { Maps } from './maps';
import { readFloatMap } from './npy';

/** The maps of a change, all on the later reading's grid. */
export interface ChangeMaps {
  change: Maps;
  before: Maps;
  after: Maps;
}

/** A change and its maps. */
export async function loadChange(later: string, earlier: string): Promise<{ change: Change; maps: ChangeMaps }> {
  const change = await api.change(later, earlier);
  const names = [change.maps.change, change.maps.sigma, change.maps.before];
  const [map, sigma, before] = (await Promise.all(names.map((name) => changeFile(later, earlier, name)))).map(readFloatMap);
  const [after, afterSigma] = (await Promise.all(['deviation.npy', 'sigma.npy'].map((name) => readingFile(later, name)))).map(readFloatMap);
  const unread = { nx: map!.nx, ny: map!.ny, data: new Uint8Array(map!.data.length) };
  const unknown = { ...before!, data: new Float32Array(before!.data.length).fill(NaN) };
  return {
    change,
    maps: {
      change: { deviation: map!, sigma: sigma!, unread },
      before: { deviation: before!, sigma: unknown, unread },
      after: { deviation: after!, sigma: afterSigma!, unread },
    },
  };
}
