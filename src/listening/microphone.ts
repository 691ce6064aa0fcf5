/** The one place that touches the microphone. */
import collectorUrl from './collector.ts?worker&url';
import type { Request, Reply, Wiring } from './orders.ts';

/** An open microphone, with the Worker that listens to it. */
export interface Line {
  readonly context: AudioContext;
  order(order: Request): void;
  close(): void;
}

/** A muted microphone is gone after so many ms: phones mute it for a call, some for a moment. */
const MUTED = 2000;

/** Everything that a telephone would do to a voice is off: it takes away what rings. */
const CONSTRAINTS: MediaStreamConstraints = {
  audio: {
    echoCancellation: false,
    noiseSuppression: false,
    autoGainControl: false,
    channelCount: 1,
  },
};

/**
 * Asks for the microphone and listens to it, at the context's own rate.
 * @param onTold what the Worker tells
 * @param onGone called once where it goes away by itself
 * @throws what `getUserMedia` throws; see `stateOfError`
 */
export async function openLine(
  context: AudioContext,
  onTold: (told: Reply) => void,
  onGone: () => void,
): Promise<Line> {
  if (!navigator.mediaDevices) throw new DOMException('No media devices', 'NotFoundError');
  const stream = await navigator.mediaDevices.getUserMedia(CONSTRAINTS);
  try {
    await context.audioWorklet.addModule(collectorUrl);
    return wire(context, stream, onTold, onGone);
  } catch (error) {
    for (const track of stream.getTracks()) track.stop();
    throw error;
  }
}

function wire(
  context: AudioContext,
  stream: MediaStream,
  onTold: (told: Reply) => void,
  onGone: () => void,
): Line {
  const collector = new AudioWorkletNode(context, 'collector', {
    numberOfOutputs: 0,
    channelCount: 1,
    channelCountMode: 'explicit',
  });
  const source = context.createMediaStreamSource(stream);
  const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  const blocks = new MessageChannel();
  const page = new MessageChannel();
  const wiring: Wiring = { blocks: blocks.port2, page: page.port2, rate: context.sampleRate };
  worker.postMessage(wiring, [blocks.port2, page.port2]);
  collector.port.postMessage(blocks.port1, [blocks.port1]);
  source.connect(collector);
  page.port1.addEventListener('message', ({ data }: MessageEvent<Reply>) => onTold(data));
  page.port1.start();
  const close = () => {
    unwatch();
    source.disconnect();
    collector.port.postMessage(null);
    for (const track of stream.getTracks()) track.stop();
    worker.terminate();
    page.port1.close();
  };
  const unwatch = watch(stream, () => {
    close();
    onGone();
  });
  return { context, order: (order) => page.port1.postMessage(order), close };
}

/** Tells once when the microphone ends, stays muted, or the page is left; gives what ends the watch. */
function watch(stream: MediaStream, onGone: () => void): () => void {
  const [track] = stream.getAudioTracks();
  let muted: ReturnType<typeof setTimeout> | undefined;
  const mute = () => {
    muted = setTimeout(onGone, MUTED);
  };
  const unmute = () => clearTimeout(muted);
  const hide = () => {
    if (document.visibilityState === 'hidden') onGone();
  };
  track?.addEventListener('ended', onGone);
  track?.addEventListener('mute', mute);
  track?.addEventListener('unmute', unmute);
  document.addEventListener('visibilitychange', hide);
  return () => {
    unmute();
    track?.removeEventListener('ended', onGone);
    track?.removeEventListener('mute', mute);
    track?.removeEventListener('unmute', unmute);
    document.removeEventListener('visibilitychange', hide);
  };
}
