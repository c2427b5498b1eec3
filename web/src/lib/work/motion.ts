/** Listens to the accelerometer for two knocks. */
import { KnockEar } from './knock';

/** A device that has told nothing by then has no accelerometer, ms. */
const SILENT_MS = 2_500;

/** Why knocks cannot be heard; each is a text `knock-…`. */
export type NoKnock = 'insecure' | 'none' | 'denied' | 'silent';

interface Asking {
  requestPermission?: () => Promise<'granted' | 'denied'>;
}

/** Begins to listen, asking for leave where the system wants that; gives the way to stop. `cannot` hears why it does not go. */
export async function hearKnocks(knocked: () => void, cannot: (why: NoKnock) => void): Promise<() => void> {
  const nothing = () => {};
  if (typeof DeviceMotionEvent === 'undefined') {
    cannot(isSecureContext ? 'none' : 'insecure');
    return nothing;
  }
  const asking = DeviceMotionEvent as unknown as Asking;
  if (asking.requestPermission && (await asking.requestPermission().catch(() => 'denied')) !== 'granted') {
    cannot('denied');
    return nothing;
  }
  const ear = new KnockEar();
  let told = false;
  const hear = ({ accelerationIncludingGravity: a, timeStamp }: DeviceMotionEvent) => {
    if (!a || a.x === null || a.y === null || a.z === null) return;
    told = true;
    if (ear.hear({ t: timeStamp / 1000, x: a.x, y: a.y, z: a.z })) knocked();
  };
  addEventListener('devicemotion', hear);
  const timer = setTimeout(() => !told && cannot(isSecureContext ? 'silent' : 'insecure'), SILENT_MS);
  return () => {
    clearTimeout(timer);
    removeEventListener('devicemotion', hear);
  };
}
