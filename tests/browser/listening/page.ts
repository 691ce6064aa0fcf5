/** A page with nothing but listening, for driving it in a real browser with a file as its microphone. */
import * as listening from '../../../src/listening/index.ts';
import { renderClick } from '../../../src/sound/click.ts';

const context = new AudioContext();

/** Opens the microphone and hears the opening silence. */
async function open(): Promise<number | null> {
  await context.resume();
  await listening.openMicrophone(context);
  return listening.hearSilence();
}

/** Follows until it is over; what was told at once comes with it. */
function follow(expected: listening.Expected) {
  const atOnce: number[] = [];
  return new Promise<{ performance: listening.Performance; atOnce: number[] }>((resolve) => {
    listening.follow(expected, {
      onRight: (index) => atOnce.push(index),
      onOver: (performance) => resolve({ performance, atOnce }),
    });
  });
}

/** The first reading of a string after so many ms. */
function tune(strings: readonly number[], after: number): Promise<listening.StringTuning> {
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

/** What came of a ramp in so many ms. */
interface Counted {
  blocks: number;
  /** Frames of the audio clock that no block covers. */
  lost: number;
  /** Places where the ramp does not go on: what the microphone gave is missing there, or doubled. */
  breaks: number;
  /** Seconds of audio, and of the wall clock, between the first block and the last. */
  audio: number;
  wall: number;
}

/**
 * Watches blocks that come from the worklet, for so many ms, while the microphone hears a ramp. They are copied on their
 * way to the Worker.
 */
function blocks(ms: number): Promise<Counted> {
  const counted: Counted = { blocks: 0, lost: 0, breaks: 0, audio: 0, wall: 0 };
  return new Promise((resolve) => {
    let [next, first, begun, last] = [-1, 0, 0, 0];
    counting = ({ frame, samples }) => {
      if (next < 0) [first, begun] = [frame, performance.now()];
      else {
        counted.lost += Math.abs(frame - next);
        counted.breaks += breaksIn(last, samples);
      }
      counted.blocks++;
      next = frame + samples.length;
      last = samples.at(-1)!;
      counted.audio = (next - first) / context.sampleRate;
      counted.wall = (performance.now() - begun) / 1000;
    };
    setTimeout(() => resolve(counted), ms);
  });
}

/** Where a ramp from −1 to 1 in 32768 samples does not go on; that it begins anew is no break. */
function breaksIn(last: number, samples: Float32Array): number {
  let breaks = 0;
  let before = last;
  for (const value of samples) {
    const by = 16384 * (value - before + (value - before < -1 ? 2 : 0));
    if (Math.abs(by - 1) > 0.6) breaks++;
    before = value;
  }
  return breaks;
}

let counting = (_block: { frame: number; samples: Float32Array }) => {};
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
  // The worklet's way to the Worker: through here.
  const between = new MessageChannel();
  between.port2.addEventListener('message', ({ data }) => {
    counting(data);
    message.postMessage(data, [data.samples.buffer]);
  });
  between.port2.start();
  return post.call(this, between.port1, [between.port1]);
} as typeof MessagePort.prototype.postMessage;

const ears = {
  blocks,
  listening,
  context,
  open,
  follow,
  tune,
  hearItself,
  watchStream,
  click: () => renderClick(context.sampleRate),
  state: () => listening.microphoneState.value,
  sentence: () => listening.microphoneSentence.value,
};

declare global {
  interface Window {
    readonly ears: typeof ears;
  }
}
Object.assign(window, { ears });
