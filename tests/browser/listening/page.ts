/** A page with nothing but listening, for driving it in a real browser with a file as its microphone. */
import * as microphone from '../../../src/listening/index.ts';
import { microphoneSentence } from '../../../src/listening/sentences.ts';
import * as tasks from '../../../src/listening/tasks.ts';
import collectorUrl from '../../../src/listening/collector.ts?worker&url';
import { renderClick } from '../../../src/sound/click.ts';
import type { Counted } from './between.ts';

const listening = { ...microphone, ...tasks };

const context = new AudioContext();

/** Opens the microphone and hears the opening silence. */
async function open(): Promise<number | null> {
  await context.resume();
  await listening.openMicrophone(context);
  return listening.hearSilence();
}

/** Follows until it is over; what was told at once comes with it. */
function follow(expected: microphone.Expected) {
  const atOnce: number[] = [];
  return new Promise<{ performance: microphone.Performance; atOnce: number[] }>((resolve) => {
    listening.follow(expected, {
      onRight: (index) => atOnce.push(index),
      onOver: (performance) => resolve({ performance, atOnce }),
    });
  });
}

/** The first reading of a string after so many ms. */
function tune(strings: readonly number[], after: number): Promise<microphone.StringTuning> {
  const begun = performance.now();
  return new Promise((resolve) => {
    const task = listening.tuneUp(strings, 440, {
      onString(tuning) {
        if (performance.now() - begun < after) return;
        task.stop();
        resolve(tuning);
      },
    });
  });
}

/** From now on the microphone hears what the page itself sounds, as many seconds late as the delay that is given says. */
function hearItself(): AudioParam {
  const into = context.createMediaStreamDestination();
  const late = context.createDelay(1);
  late.connect(into);
  const connect = AudioNode.prototype.connect as (this: AudioNode, to: AudioNode) => AudioNode;
  AudioNode.prototype.connect = function (this: AudioNode, to: AudioNode) {
    return connect.call(this, to === context.destination ? late : to);
  } as typeof AudioNode.prototype.connect;
  navigator.mediaDevices.getUserMedia = () => Promise.resolve(into.stream);
  return late.delayTime;
}

/** Keeps the stream that is given next, so that it can be taken away. */
function watchStream(): { take(): void } {
  const given: MediaStream[] = [];
  const ask = navigator.mediaDevices.getUserMedia.bind(navigator.mediaDevices);
  navigator.mediaDevices.getUserMedia = async (constraints) => {
    const stream = await ask(constraints);
    given.push(stream);
    return stream;
  };
  return {
    take: () => given.at(-1)!.getAudioTracks()[0]!.dispatchEvent(new Event('ended')),
  };
}

/** What came of so many ms, told by the Worker between. */
function blocks(ms: number): Promise<Counted> {
  between.postMessage('begin');
  return new Promise((resolve) => {
    between.addEventListener('message', ({ data }: MessageEvent<Counted>) => resolve(data), {
      once: true,
    });
    setTimeout(() => between.postMessage('tell'), ms);
  });
}

/**
 * Seconds of the audio thread that a second of collecting takes: the collector over a minute of silence, less the same
 * minute without it.
 */
async function collecting(): Promise<number> {
  const seconds = 60;
  const rendered = async (collects: boolean) => {
    const offline = new OfflineAudioContext(1, seconds * context.sampleRate, context.sampleRate);
    await offline.audioWorklet.addModule(collectorUrl);
    const source = new ConstantSourceNode(offline);
    source.start();
    source.connect(offline.destination);
    if (collects) {
      const collector = new AudioWorkletNode(offline, 'collector', { numberOfOutputs: 0 });
      const { port1, port2 } = new MessageChannel();
      collector.port.postMessage(port1, [port1]);
      port2.close();
      source.connect(collector);
    }
    const begun = performance.now();
    await offline.startRendering();
    return (performance.now() - begun) / 1000;
  };
  await rendered(true);
  return ((await rendered(true)) - (await rendered(false))) / seconds;
}

// The worklet's way to the Worker goes through another Worker, and not through the page, which is slowed down.
const between = new Worker(new URL('./between.ts', import.meta.url), { type: 'module' });
const post = MessagePort.prototype.postMessage as (
  this: MessagePort,
  message: unknown,
  ...rest: unknown[]
) => void;
MessagePort.prototype.postMessage = function (
  this: MessagePort,
  message: unknown,
  ...rest: unknown[]
) {
  if (!(message instanceof MessagePort)) return post.call(this, message, ...rest);
  const { port1, port2 } = new MessageChannel();
  between.postMessage({ from: port2, to: message }, [port2, message]);
  return post.call(this, port1, [port1]);
} as typeof MessagePort.prototype.postMessage;

const ears = {
  blocks,
  collecting,
  listening,
  context,
  open,
  follow,
  tune,
  hearItself,
  watchStream,
  click: () => renderClick(context.sampleRate),
  state: () => listening.microphoneState.value,
  sentence: () => microphoneSentence.value,
};

declare global {
  interface Window {
    readonly ears: typeof ears;
  }
}
Object.assign(window, { ears });
