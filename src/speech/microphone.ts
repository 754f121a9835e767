/** The microphone as pieces of sound on a port: getUserMedia, an AudioContext at the device's own rate, the capture worklet. */
import captureUrl from './worklet/capture.ts?worker&url';

export type OpenMicrophone = (constraints: MediaStreamConstraints) => Promise<MediaStream>;

export interface Microphone {
  readonly stream: MediaStream;
  /** Hz; sound comes at this rate. */
  readonly rate: number;
  /** Sound goes here until the microphone is closed. */
  connect(port: MessagePort): void;
  /** A context that was made before the first touch of the screen sleeps until then. @returns whether sound comes now */
  resume(): Promise<boolean>;
  /** Called once when the device goes away. */
  onLost(listener: () => void): void;
  close(): void;
}

/** The loudspeaker's voice is taken out by the browser; noise and level are left to the recogniser, which was made for them. */
const CONSTRAINTS: MediaStreamConstraints = {
  audio: { echoCancellation: true, noiseSuppression: false, autoGainControl: false, channelCount: 1 },
};

const RESUME_MS = 800;

/** @throws what getUserMedia throws: NotAllowedError, NotFoundError, … */
export async function openMicrophone(getUserMedia: OpenMicrophone): Promise<Microphone> {
  const stream = await getUserMedia(CONSTRAINTS);
  const context = new AudioContext({ latencyHint: 'interactive' });
  const stopAll = () => {
    for (const track of stream.getTracks()) track.stop();
    if (context.state !== 'closed') void context.close();
  };
  try {
    await context.audioWorklet.addModule(captureUrl);
    const source = context.createMediaStreamSource(stream);
    const capture = new AudioWorkletNode(context, 'capture', { numberOfInputs: 1, numberOfOutputs: 1, outputChannelCount: [1] });
    // Some browsers run only what leads to the loudspeaker: connected, and silent.
    const silent = new GainNode(context, { gain: 0 });
    source.connect(capture).connect(silent).connect(context.destination);
    return {
      stream,
      rate: context.sampleRate,
      connect: (port) => capture.port.postMessage(port, [port]),
      async resume() {
        // Without a touch the promise may never settle; listening goes on and the watchdog tells.
        const patience = new Promise<void>((resolve) => setTimeout(resolve, RESUME_MS));
        if (context.state === 'suspended') await Promise.race([context.resume(), patience]);
        return context.state === 'running';
      },
      onLost(listener) {
        for (const track of stream.getAudioTracks()) track.addEventListener('ended', listener, { once: true });
      },
      close() {
        source.disconnect();
        stopAll();
      },
    };
  } catch (error) {
    stopAll();
    throw error;
  }
}
