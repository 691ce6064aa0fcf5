import { beforeEach, expect, test, vi } from 'vitest';
import type { Observer } from '../../src/sound/player.ts';

/** A player that makes no sound: what was asked of it, and who is to be told. */
const fake = vi.hoisted(() => ({
  opens: true,
  asked: [] as string[],
  observer: undefined as Observer | undefined,
}));

vi.mock('../../src/sound/player.ts', () => ({
  openPlayer: async () => {
    if (!fake.opens) throw new Error('no strings');
    return {
      setLevel() {},
      setSpeed() {},
      playSounding(
        _sounding: unknown,
        _arrangement: unknown,
        _controls: unknown,
        observer: Observer,
      ) {
        fake.asked.push('play');
        fake.observer = observer;
      },
      pluck: (midi: number, string?: number) => fake.asked.push(`pluck ${midi} ${string}`),
      stop: () => fake.asked.push('stop'),
    };
  },
}));

let changed: () => void;

class Context {
  readonly state = 'running';
  resume = async () => {};
  addEventListener(_: string, listener: () => void) {
    changed = listener;
  }
}

const SOUNDING = { tempo: 60, notes: [{ midi: 60, at: 0, length: 2 }] };

async function fresh() {
  vi.resetModules();
  return import('../../src/sound/index.ts');
}

async function ready() {
  const sound = await fresh();
  sound.unlock();
  await vi.waitFor(() => expect(sound.soundState.value).toBe('ready'));
  return sound;
}

beforeEach(() => {
  Object.assign(fake, { opens: true, asked: [], observer: undefined });
  vi.stubGlobal('AudioContext', Context);
  vi.stubGlobal('document', { addEventListener() {} });
  vi.stubGlobal('navigator', {});
  return () => {
    vi.unstubAllGlobals();
    vi.useRealTimers();
  };
});

test('where opening failed it stays refused, whatever the context says, until a gesture tries again', async () => {
  fake.opens = false;
  const sound = await fresh();
  sound.unlock();
  expect(sound.soundState.value).toBe('loading');
  await vi.waitFor(() => expect(sound.soundState.value).toBe('refused'));
  changed();
  expect(sound.soundState.value).toBe('refused');
  fake.opens = true;
  sound.unlock();
  expect(sound.soundState.value).toBe('loading');
  await vi.waitFor(() => expect(sound.soundState.value).toBe('ready'));
});

test('the last note rings on at the end, until the next sounding or whoever played it says stop', async () => {
  const { play } = await ready();
  const onEnd = vi.fn<() => void>();
  const playing = play(SOUNDING, { onEnd });
  fake.observer!.end();
  await playing.done;
  expect(onEnd).toHaveBeenCalledOnce();
  expect(fake.asked).toEqual(['play']);
  const other = play(SOUNDING);
  expect(fake.asked).toEqual(['play', 'stop', 'play']);
  // The first has no more to say.
  playing.stop();
  expect(fake.asked).toHaveLength(3);
  fake.observer!.end();
  other.stop();
  other.stop();
  expect(fake.asked).toEqual(['play', 'stop', 'play', 'stop']);
});

test('what is stopped is over, and what was to come after it does not begin', async () => {
  const { play } = await ready();
  const onEnd = vi.fn<() => void>();
  const playing = play(SOUNDING, { onEnd });
  playing.stop();
  await playing.done;
  expect(onEnd).not.toHaveBeenCalled();
});

test.each([
  [1400, ['pluck 60 2']],
  [1600, []],
])('a tap that waited %i ms for sound is heard: %o', async (waited, asked) => {
  vi.useFakeTimers({ toFake: ['performance'] });
  const sound = await fresh();
  sound.pluck(67, 1);
  sound.pluck(60, 2);
  vi.advanceTimersByTime(waited);
  await vi.waitFor(() => expect(sound.soundState.value).toBe('ready'));
  expect(fake.asked).toEqual(asked);
  changed();
  sound.pluck(62);
  expect(fake.asked).toEqual([...asked, 'pluck 62 undefined']);
});

test('heard is what has sounded so far: not the waiting before, nor what was stopped', async () => {
  vi.useFakeTimers({ toFake: ['performance'] });
  const sound = await fresh();
  const first = sound.play(SOUNDING);
  vi.advanceTimersByTime(300);
  expect(first.heard()).toBe(0);
  await vi.waitFor(() => expect(fake.asked).toEqual(['play']));
  const before = first.heard();
  vi.advanceTimersByTime(700);
  expect(first.heard() - before).toBe(700);
  const second = sound.play(SOUNDING);
  vi.advanceTimersByTime(2000);
  fake.observer!.end();
  vi.advanceTimersByTime(5000);
  expect(first.heard() - before).toBe(700);
  expect(second.heard()).toBe(2000);
});
