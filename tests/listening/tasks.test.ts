/** What is asked of the microphone, one thing at a time, and who is told of it. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { FreeNote, Performance } from '../../src/listening/listening.ts';
import type { Reply, Request } from '../../src/listening/orders.ts';

/** A microphone that hears nothing: what it was ordered, and how it tells and goes away. */
const line = vi.hoisted(() => ({
  ordered: [] as unknown[],
  closed: 0,
  tell: (() => {}) as unknown,
  go: () => {},
  opens: async () => {},
}));
vi.mock('../../src/listening/microphone.ts', () => ({
  openLine: async (context: unknown, onTold: unknown, onGone: () => void) => {
    Object.assign(line, { tell: onTold, go: onGone });
    await line.opens();
    return {
      context,
      order: (order: unknown) => line.ordered.push(order),
      close: () => (line.closed += 1),
    };
  },
}));

const tell = (word: Reply) => (line.tell as (word: Reply) => void)(word);
const orders = () => line.ordered as Request[];
const lastId = () => orders().at(-1)!.id;

interface Source {
  buffer: unknown;
  level: number;
  begins: number;
  stopped: boolean;
}

/** An audio context at 7 s whose sources only remember. */
function audio() {
  const sources: Source[] = [];
  const destination = {};
  const gains: { gain: { value: number }; connect(to: unknown): void }[] = [];
  return {
    sources,
    currentTime: 7,
    sampleRate: 48_000,
    destination,
    createBuffer: (channels: number, length: number, rate: number) => {
      const made = { channels, length, rate, samples: null as unknown };
      return Object.assign(made, { copyToChannel: (samples: unknown) => (made.samples = samples) });
    },
    createBufferSource() {
      const source: Source = { buffer: null, level: NaN, begins: NaN, stopped: false };
      sources.push(source);
      return Object.assign(source, {
        connect(gain: (typeof gains)[number]) {
          return { connect: () => (source.level = gain.gain.value) };
        },
        start: (at: number) => (source.begins = at),
        stop: () => (source.stopped = true),
      });
    },
    createGain: () => ({ gain: { value: 1 }, connect() {} }),
  };
}

let session: { type: string };

beforeEach(() => {
  vi.resetModules();
  session = { type: 'auto' };
  Object.assign(line, { ordered: [], closed: 0, opens: async () => {} });
  vi.stubGlobal('navigator', { audioSession: session });
});
afterEach(() => vi.unstubAllGlobals());

async function closedEar() {
  const index = await import('../../src/listening/index.ts');
  const tasks = await import('../../src/listening/tasks.ts');
  return { ...index, ...tasks };
}

async function openEar() {
  const ear = await closedEar();
  const own = audio();
  expect(await ear.openMicrophone(own as unknown as AudioContext)).toBe(true);
  return { ...ear, own };
}

const performance = (over: boolean): Performance => ({ notes: [], extras: [], restarts: 0, over });

describe('without a microphone', () => {
  it('nothing is waited for', async () => {
    const ear = await closedEar();
    expect(ear.microphoneState.value).toBe('off');
    expect(await ear.hearSilence()).toBeNull();
    expect(await ear.measureDelay(new Float32Array(4))).toBeNull();
    const task = ear.follow({ notes: [60], order: 'given' }, {});
    task.finish();
    task.restart();
    task.stop();
    expect(line.ordered).toEqual([]);
  });
});

describe('the microphone', () => {
  it('is opened once; meanwhile the phone may record, and afterwards plays as before', async () => {
    const ear = await closedEar();
    const own = audio() as unknown as AudioContext;
    const opening = ear.openMicrophone(own);
    expect([ear.microphoneState.value, session.type]).toEqual(['asking', 'play-and-record']);
    expect(ear.microphoneContext()).toBeUndefined();
    expect(await opening).toBe(true);
    expect(await ear.openMicrophone(own)).toBe(true);
    expect(ear.microphoneState.value).toBe('listening');
    expect(ear.microphoneContext()).toBe(own);
    ear.closeMicrophone();
    expect([ear.microphoneState.value, session.type, line.closed]).toEqual(['off', 'playback', 1]);
    expect(ear.microphoneContext()).toBeUndefined();
  });

  it('that is allowed only after the screen was left is let go', async () => {
    const ear = await closedEar();
    let allow!: () => void;
    line.opens = () => new Promise<void>((resolve) => (allow = resolve));
    const opening = ear.openMicrophone(audio() as unknown as AudioContext);
    await vi.waitFor(() => expect(allow).toBeDefined());
    ear.closeMicrophone();
    allow();
    expect(await opening).toBe(false);
    expect([ear.microphoneState.value, line.closed]).toEqual(['off', 1]);
  });

  it('that is refused is so until it is asked for again', async () => {
    const ear = await closedEar();
    line.opens = async () => {
      throw new DOMException('', 'NotAllowedError');
    };
    const own = audio() as unknown as AudioContext;
    expect(await ear.openMicrophone(own)).toBe(false);
    expect([ear.microphoneState.value, session.type]).toEqual(['refused', 'playback']);
    line.opens = async () => {};
    expect(await ear.openMicrophone(own)).toBe(true);
    expect(ear.microphoneState.value).toBe('listening');
  });

  it('that goes away ends what was waited for', async () => {
    const ear = await openEar();
    const level = ear.hearSilence();
    line.go();
    expect(await level).toBeNull();
    expect(ear.microphoneState.value).toBe('gone');
    const again = await openEar();
    const delay = again.measureDelay(new Float32Array(4));
    line.go();
    expect(await delay).toBeNull();
  });
});

describe('what is asked', () => {
  it('is told to who asked, as the ear tells it', async () => {
    const ear = await openEar();
    const told: unknown[] = [];
    ear.follow(
      { notes: [60, 64], order: 'given', offset: -12 },
      {
        onRight: (index, time) => told.push(['right', index, time]),
        onSettled: (one) => told.push(['settled', one.over]),
        onOver: (one) => told.push(['over', one.over]),
      },
    );
    const expected = { notes: [60, 64], order: 'given', offset: -12 };
    expect(orders().at(-1)).toEqual({ do: 'follow', id: lastId(), expected });
    const id = lastId();
    tell({ told: 'right', id, index: 1, time: 8.5 });
    tell({ told: 'settled', id, performance: performance(false) });
    tell({ told: 'over', id, performance: performance(true) });
    expect(told).toEqual([
      ['right', 1, 8.5],
      ['settled', false],
      ['over', true],
    ]);
  });

  it('of a free line is each note, and in the end all of them', async () => {
    const ear = await openEar();
    const told: unknown[] = [];
    ear.hearFreely(
      { offset: 5, reference: 442 },
      { onNote: (note) => told.push(note), onOver: (notes) => told.push([...notes]) },
    );
    expect(orders().at(-1)).toMatchObject({ do: 'free', playing: { offset: 5, reference: 442 } });
    const note: FreeNote = { time: 3, heard: 62, confidence: 0.9 };
    tell({ told: 'note', id: lastId(), note });
    tell({ told: 'played', id: lastId(), notes: [note, note] });
    expect(told).toEqual([note, [note, note]]);
  });

  it('of strokes, strings and silence is that alone', async () => {
    const ear = await openEar();
    const struck: number[] = [];
    ear.hearStrikes((time) => struck.push(time));
    tell({ told: 'right', id: lastId(), index: 0, time: 1 });
    tell({ told: 'strike', id: lastId(), time: 2.5 });
    expect(struck).toEqual([2.5]);
    const strings: unknown[] = [];
    ear.tuneUp([64, 59], 442, { onString: (one) => strings.push(one) });
    expect(orders().at(-1)).toMatchObject({ do: 'tune', strings: [64, 59], reference: 442 });
    const tuning = { string: 1, cents: -7, state: 'near', time: 4 } as const;
    tell({ told: 'strike', id: lastId(), time: 2.5 });
    tell({ told: 'string', id: lastId(), tuning });
    expect(strings).toEqual([tuning]);
    const level = ear.hearSilence();
    tell({ told: 'strike', id: lastId(), time: 3 });
    tell({ told: 'silence', id: lastId(), level: -62 });
    expect(await level).toBe(-62);
    expect(orders().map((order) => order.do)).toEqual(['strikes', 'tune', 'silence']);
  });

  it('takes the place of what was asked before, which is told of no more', async () => {
    const ear = await openEar();
    const [first, second] = [vi.fn<() => void>(), vi.fn<() => void>()];
    ear.hearStrikes(first);
    const before = lastId();
    const task = ear.hearStrikes(second);
    expect(lastId()).not.toBe(before);
    tell({ told: 'strike', id: before, time: 1 });
    expect(first).not.toHaveBeenCalled();
    tell({ told: 'strike', id: lastId(), time: 1 });
    expect(second).toHaveBeenCalledTimes(1);
    const id = lastId();
    task.stop();
    tell({ told: 'strike', id, time: 2 });
    expect(second).toHaveBeenCalledTimes(1);
    expect(orders().at(-1)).toEqual({ do: 'stop', id });
  });

  it('can be finished or begun again, and is then told on', async () => {
    const ear = await openEar();
    const onOver = vi.fn<(one: Performance) => void>();
    const task = ear.follow({ notes: [60], order: 'any' }, { onOver });
    const id = lastId();
    task.restart();
    task.finish();
    expect(orders().slice(1)).toEqual([
      { do: 'restart', id },
      { do: 'finish', id },
    ]);
    tell({ told: 'over', id, performance: performance(true) });
    expect(onOver).toHaveBeenCalledTimes(1);
  });

  it('by a task that was replaced stops only that one', async () => {
    const ear = await openEar();
    const first = ear.hearStrikes(() => {});
    const second = vi.fn<() => void>();
    ear.hearStrikes(second);
    const id = lastId();
    first.stop();
    tell({ told: 'strike', id, time: 2 });
    expect(second).toHaveBeenCalledTimes(1);
  });
});

describe('the delay', () => {
  const click = Float32Array.of(0, 0.5, -0.5, 0);

  it('is heard by five clicks, the first in three tenths of a second, then seven tenths apart', async () => {
    const { measureDelay, own } = await openEar();
    const delay = measureDelay(click);
    const times = [7.3, 8, 8.7, 9.4, 10.1].map((time) => expect.closeTo(time, 9));
    expect(orders().at(-1)).toEqual({ do: 'delay', id: lastId(), click, times });
    expect(own.sources.map(({ begins }) => begins)).toEqual(times);
    for (const { buffer, level } of own.sources) {
      expect(buffer).toMatchObject({ channels: 1, length: 4, rate: 48_000, samples: click });
      expect(level).toBe(0.5);
    }
    tell({ told: 'delay', id: lastId(), seconds: 0.043 });
    expect(await delay).toBe(0.043);
  });

  it('is not known where it is ended, and no click sounds on', async () => {
    const { measureDelay, own } = await openEar();
    const ending = new AbortController();
    const delay = measureDelay(click, ending.signal);
    const id = lastId();
    expect(own.sources.some(({ stopped }) => stopped)).toBe(false);
    ending.abort();
    expect(await delay).toBeNull();
    expect(own.sources.every(({ stopped }) => stopped)).toBe(true);
    expect(orders().at(-1)).toEqual({ do: 'stop', id });
  });
});
