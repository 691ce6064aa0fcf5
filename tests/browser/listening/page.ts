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

/** From now on the microphone hears what the page itself sounds, so many seconds late. */
function hearItself(seconds: number): void {
  const into = context.createMediaStreamDestination();
  const late = context.createDelay(1);
  late.delayTime.value = seconds;
  late.connect(into);
  const connect = AudioNode.prototype.connect as (this: AudioNode, to: AudioNode) => AudioNode;
  AudioNode.prototype.connect = function (this: AudioNode, to: AudioNode) {
    return connect.call(this, to === context.destination ? late : to);
  } as typeof AudioNode.prototype.connect;
  navigator.mediaDevices.getUserMedia = () => Promise.resolve(into.stream);
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

const ears = {
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
