/** The camera of this device: opened, held still, and asked for photos. */

/** What a browser may lock that TypeScript's own list lacks (W3C, MediaStream Image Capture). */
interface Capabilities extends MediaTrackCapabilities {
  exposureMode?: string[];
  focusMode?: string[];
  whiteBalanceMode?: string[];
  torch?: boolean;
}
interface ImageCaptureLike {
  takePhoto: () => Promise<Blob>;
}
declare global {
  interface Window {
    ImageCapture?: new (track: MediaStreamTrack) => ImageCaptureLike;
  }
}

/** What could be locked. */
export type Lock = 'exposure' | 'focus' | 'white-balance';

const JPEG_QUALITY = 0.95;
/** A photo of the phone's full size, where the browser takes one, must come within this. */
const PHOTO_MS = 6000;

export interface Camera {
  stream: MediaStream;
  /** Holds exposure, focus and white balance where the browser can. What it has locked. */
  lock: () => Promise<Lock[]>;
  /** The next frame of the picture that was taken after this moment. */
  shoot: (after_ms: number) => Promise<Blob>;
  /** A photo in the phone's full size where it takes them, for the set-up. */
  photo: () => Promise<Blob>;
  close: () => void;
}

/** Opens the camera on the far side of the device, as large as it goes, torch off. */
export async function openCamera(video: HTMLVideoElement): Promise<Camera> {
  const wanted = { facingMode: { ideal: 'environment' }, width: { ideal: 3840 }, height: { ideal: 2160 } };
  const stream = await navigator.mediaDevices.getUserMedia({ audio: false, video: wanted });
  const track = stream.getVideoTracks()[0]!;
  video.srcObject = stream;
  await video.play();
  const can = (track.getCapabilities?.() ?? {}) as Capabilities;
  const set = async (wish: Record<string, unknown>) => track.applyConstraints({ advanced: [wish as MediaTrackConstraintSet] }).then(() => true, () => false);
  if (can.torch) await set({ torch: false });
  const lock = async () => {
    const locked: Lock[] = [];
    for (const [name, modes, setting] of [['exposure', can.exposureMode, 'exposureMode'], ['focus', can.focusMode, 'focusMode'], ['white-balance', can.whiteBalanceMode, 'whiteBalanceMode']] as const) {
      if (modes?.includes('manual') && (await set({ [setting]: 'manual' }))) locked.push(name);
    }
    return locked;
  };
  const shoot = async (after_ms: number) => {
    await frameAfter(video, after_ms);
    return grab(video);
  };
  const photo = async () => {
    if (!window.ImageCapture) return grab(video);
    const late = new Promise<never>((_, reject) => setTimeout(() => reject(new Error('late')), PHOTO_MS));
    const taken = await Promise.race([new window.ImageCapture(track).takePhoto(), late]).catch(() => null);
    return taken?.type === 'image/jpeg' || taken?.type === 'image/png' ? taken : grab(video);
  };
  return { stream, lock, shoot, photo, close: () => stream.getTracks().forEach((one) => one.stop()) };
}

/** Waits for a frame that was exposed after a moment of `performance.now()`. */
function frameAfter(video: HTMLVideoElement, after_ms: number): Promise<void> {
  return new Promise((resolve) => {
    const look: VideoFrameRequestCallback = (_, frame) => {
      // Without a time of capture the presentation stands in; either way one more frame is let pass.
      const taken = frame.captureTime ?? frame.presentationTime;
      if (taken >= after_ms) video.requestVideoFrameCallback(() => resolve());
      else video.requestVideoFrameCallback(look);
    };
    if ('requestVideoFrameCallback' in video) video.requestVideoFrameCallback(look);
    else setTimeout(resolve, Math.max(0, after_ms - performance.now()) + 120);
  });
}

async function grab(video: HTMLVideoElement): Promise<Blob> {
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [video.videoWidth, video.videoHeight];
  canvas.getContext('2d', { alpha: false })!.drawImage(video, 0, 0);
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg', JPEG_QUALITY));
  if (!blob) throw new Error('no photo');
  return blob;
}
