/** What can be asked of the microphone once it is open, one thing at a time. */
import type { Expected, Follower, FreeListener, FreePlaying, Task, Tuner } from './listening.ts';
import { microphoneContext, giveOrder } from './index.ts';

/** Clicks sounded to measure the delay, seconds to the first and between them, and how loud they are. */
const CLICKS = 5;
const LEAD = 0.3;
const BETWEEN = 0.7;
const CLICK_LEVEL = 0.5;

/**
 * Listens to half a second in which nothing is played; what is judged afterwards is judged above that noise.
 * @returns its level in decibels below full scale, or null where there is no microphone (any more)
 */
export function hearSilence(): Promise<number | null> {
  return new Promise((resolve) => {
    giveOrder(
      (id) => ({ do: 'silence', id }),
      (word) => {
        if (word.told === 'silence') resolve(word.level);
      },
      () => resolve(null),
    );
  });
}

/** Follows what is played, until it is over or stopped. A performance of ours ends what was listened to before. */
export function follow(expected: Expected, follower: Follower): Task {
  return giveOrder(
    (id) => ({ do: 'follow', id, expected }),
    (word) => {
      if (word.told === 'right') follower.onRight?.(word.index, word.time);
      if (word.told === 'settled') follower.onSettled?.(word.performance);
      if (word.told === 'over') follower.onOver?.(word.performance);
    },
  );
}

/**
 * Hears a single-note line of which nothing is asked, until it is finished or stopped. Chords are not told apart, nor
 * which string was played; see `FreeNote.confidence`.
 */
export function hearFreely(playing: FreePlaying, listener: FreeListener): Task {
  return giveOrder(
    (id) => ({ do: 'free', id, playing }),
    (word) => {
      if (word.told === 'note') listener.onNote?.(word.note);
      if (word.told === 'played') listener.onOver?.(word.notes);
    },
  );
}

/**
 * Hears when strings are struck, muted or sounding, until it is stopped: told in order, some three tenths of a second
 * late, in seconds on the clock of the context.
 */
export function hearStrikes(onStrike: (time: number) => void): Task {
  return giveOrder(
    (id) => ({ do: 'strikes', id }),
    (word) => {
      if (word.told === 'strike') onStrike(word.time);
    },
  );
}

/**
 * Reads open strings, until it is stopped.
 * @param strings MIDI numbers of the open strings, a capo counted in
 * @param reference A4 in Hz
 */
export function tuneUp(strings: readonly number[], reference: number, tuner: Tuner): Task {
  return giveOrder(
    (id) => ({ do: 'tune', id, strings, reference }),
    (word) => {
      if (word.told === 'string') tuner.onString?.(word.tuning);
    },
  );
}

/**
 * Sounds the click a few times and listens for it: how long sound takes out of the loudspeaker and in again.
 * @param click its samples at the context's rate
 * @param ending ends it: no click is sounded any more
 * @returns seconds, or null where it is not heard (headphones), is not the same each time, or was ended
 */
export function measureDelay(
  click: Float32Array<ArrayBuffer>,
  ending?: AbortSignal,
): Promise<number | null> {
  const context = microphoneContext();
  if (!context) return Promise.resolve(null);
  const begin = context.currentTime + LEAD;
  const times = Array.from({ length: CLICKS }, (_, i) => begin + i * BETWEEN);
  return new Promise((resolve) => {
    const task = giveOrder(
      (id) => ({ do: 'delay', id, click, times }),
      (word) => {
        if (word.told === 'delay') resolve(word.seconds);
      },
      () => resolve(null),
    );
    const clicks = times.map((time) => soundClick(context, click, time));
    ending?.addEventListener('abort', () => {
      for (const source of clicks) source.stop();
      task.stop();
      resolve(null);
    });
  });
}

function soundClick(
  context: AudioContext,
  click: Float32Array<ArrayBuffer>,
  time: number,
): AudioBufferSourceNode {
  const buffer = context.createBuffer(1, click.length, context.sampleRate);
  buffer.copyToChannel(click, 0);
  const source = context.createBufferSource();
  source.buffer = buffer;
  const level = context.createGain();
  level.gain.value = CLICK_LEVEL;
  source.connect(level).connect(context.destination);
  source.start(time);
  return source;
}
