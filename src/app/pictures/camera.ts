/** A picture without a hand: the camera at the back is opened, one frame is taken, and the camera is given back. */
import { PictureError, type PictureTrouble } from './pictureError.ts';
import { jpegOf } from './shrinkPicture.ts';

export interface TakeOptions {
  readonly signal: AbortSignal;
  /** At the very moment: the person holds still until then. */
  readonly onTaken: () => void;
}

/** Frames that exposure and focus are given to settle. */
const SETTLING_FRAMES = 12;
/** A camera that gives no frame for that long gives none. */
const FRAME_MS = 5000;
/** Mean brightness, 0..255, below which the lamp is lit, where the camera has one. */
const DARK = 48;

/**
 * @returns JPEG bytes
 * @throws PictureError `no-camera`, `denied`, `busy`, `too-large`; whatever the signal was aborted with
 */
export async function takePicture({ signal, onTaken }: TakeOptions): Promise<ArrayBuffer> {
  const stream = await openCamera();
  const video = document.createElement('video');
  try {
    signal.throwIfAborted();
    video.muted = true;
    video.playsInline = true;
    video.srcObject = stream;
    await video.play().catch((cause: unknown) => {
      throw new PictureError('busy', { cause });
    });
    await framesOf(video, SETTLING_FRAMES, signal);
    if (brightnessOf(video) < DARK && (await lightUp(stream))) await framesOf(video, SETTLING_FRAMES, signal);
    onTaken();
    return await jpegOf(video, video.videoWidth, video.videoHeight);
  } finally {
    video.srcObject = null;
    for (const track of stream.getTracks()) track.stop();
  }
}

async function openCamera(): Promise<MediaStream> {
  // Absent on an insecure address and in old web views.
  const devices = navigator.mediaDevices as MediaDevices | undefined;
  if (!devices?.getUserMedia) throw new PictureError('no-camera');
  try {
    return await devices.getUserMedia({
      video: { facingMode: 'environment', width: { ideal: 1920 }, height: { ideal: 1080 } },
      audio: false,
    });
  } catch (cause) {
    throw new PictureError(troubleOf(cause), { cause });
  }
}

/** Names as in Media Capture and Streams (W3C), `getUserMedia`. */
function troubleOf(cause: unknown): PictureTrouble {
  const name = cause instanceof Error ? cause.name : '';
  if (name === 'NotAllowedError' || name === 'SecurityError') return 'denied';
  return name === 'NotReadableError' || name === 'AbortError' ? 'busy' : 'no-camera';
}

function framesOf(video: HTMLVideoElement, count: number, signal: AbortSignal): Promise<void> {
  return new Promise((resolve, reject) => {
    let left = count;
    const end = (settle: () => void) => {
      clearTimeout(limit);
      signal.removeEventListener('abort', abort);
      settle();
    };
    const abort = () => end(() => reject(signal.reason));
    const limit = setTimeout(
      // A slow camera that has shown something is good enough.
      () => end(() => (video.videoWidth > 0 && left < count ? resolve() : reject(new PictureError('busy')))),
      FRAME_MS,
    );
    signal.addEventListener('abort', abort, { once: true });
    const next = () => {
      left -= 1;
      if (left <= 0) end(resolve);
      else video.requestVideoFrameCallback(next);
    };
    video.requestVideoFrameCallback(next);
  });
}

const SAMPLE = 24;

function brightnessOf(video: HTMLVideoElement): number {
  const canvas = document.createElement('canvas');
  canvas.width = SAMPLE;
  canvas.height = SAMPLE;
  const drawing = canvas.getContext('2d', { willReadFrequently: true });
  if (!drawing) return 255;
  drawing.drawImage(video, 0, 0, SAMPLE, SAMPLE);
  const { data } = drawing.getImageData(0, 0, SAMPLE, SAMPLE);
  let sum = 0;
  for (let at = 0; at < data.length; at += 4) sum += ((data[at] ?? 0) + (data[at + 1] ?? 0) + (data[at + 2] ?? 0)) / 3;
  return sum / (SAMPLE * SAMPLE);
}

/** `torch`: MediaStream Image Capture (W3C); not every camera has one, and the page's types do not know it. */
async function lightUp(stream: MediaStream): Promise<boolean> {
  const [track] = stream.getVideoTracks();
  const capabilities = (track?.getCapabilities?.() ?? {}) as { torch?: boolean };
  if (!track || capabilities.torch !== true) return false;
  return track.applyConstraints({ advanced: [{ torch: true } as MediaTrackConstraintSet] }).then(
    () => true,
    () => false,
  );
}
