/** What of the settings of sound reaches the strings: how loud, at which A, how fast, and whether at all. */
import { beforeEach, describe, expect, test, vi } from 'vitest';
import { planOf } from '../../src/sound/plan.ts';

const heard = vi.hoisted(() => ({
  plucks: [] as { midi: number; time: number; reference: number }[],
  strings: [] as number[],
  levels: [] as number[],
  clicks: [] as { time: number; gain: number }[],
  player: undefined as { reference: number } | undefined,
}));

vi.mock('../../src/sound/strings.ts', () => ({
  Strings: class {
    pluck({ midi, string }: { midi: number; string: number }, time: number, reference: number) {
      heard.plucks.push({ midi, time, reference });
      heard.strings.push(string);
    }
    damp() {}
    silence() {}
    add() {}
  },
}));

const node = () => ({
  gain: { value: 0, setTargetAtTime: (level: number) => heard.levels.push(level) },
  connect: (to: unknown) => to,
  start() {},
});

/** As much of Tone's context as a player needs, its clock stopped at 1 s. */
function contextOf() {
  let tick = () => {};
  const context = {
    sampleRate: 44_100,
    rawContext: { destination: {}, baseLatency: 0, currentTime: 1, state: 'running' },
    createGain: node,
    createWaveShaper: node,
    createBufferSource() {
      let to = node();
      return {
        connect: (next: ReturnType<typeof node>) => (to = next),
        start: (time: number) => heard.clicks.push({ time, gain: to.gain.value }),
      };
    },
    createBuffer: () => ({ copyToChannel() {} }),
    on: (_: string, call: () => void) => (tick = call),
    now: () => 1,
    immediate: () => 1,
  };
  return { context, advance: (seconds: number) => ((context.now = () => 1 + seconds), tick()) };
}

const SOUNDING = {
  tempo: 60,
  notes: [60, 64, 67].map((midi, at) => ({ midi, at, length: 1 })),
};
const USUAL = { speed: 1, click: false, muted: false };
const nobody = { note() {}, click() {}, end() {} };

async function playerOn(context: unknown) {
  const { Player } = await import('../../src/sound/player.ts');
  return new Player(context as never);
}

beforeEach(() => {
  Object.assign(heard, { plucks: [], strings: [], levels: [], clicks: [], player: undefined });
});

describe('a phrase', () => {
  test('is plucked at its pitches in its tempo, a tenth of a second and less behind the look-ahead', async () => {
    const { context, advance } = contextOf();
    const player = await playerOn(context);
    player.play(planOf(SOUNDING), USUAL, nobody);
    advance(10);
    expect(heard.plucks.map(({ midi }) => midi)).toEqual([60, 64, 67]);
    expect(heard.plucks.map(({ time }) => time)).toEqual([1.02, 2.02, 3.02]);
  });

  test.each([
    [0.6, 1 / 0.6],
    [2, 0.5],
  ])('at %f of its tempo has beats of %f s and the same pitches', async (speed, beat) => {
    const { context, advance } = contextOf();
    const player = await playerOn(context);
    player.play(planOf(SOUNDING), { ...USUAL, speed }, nobody);
    advance(10);
    expect(heard.plucks.map(({ midi }) => midi)).toEqual([60, 64, 67]);
    heard.plucks.forEach(({ time }, i) => expect(time).toBeCloseTo(1.02 + i * beat, 9));
  });

  test('that is muted is silent, and so from the moment on when it is', async () => {
    const { context, advance } = contextOf();
    const player = await playerOn(context);
    const controls = { ...USUAL };
    player.play(planOf(SOUNDING), controls, nobody);
    advance(0.5);
    controls.muted = true;
    advance(10);
    expect(heard.plucks.map(({ midi }) => midi)).toEqual([60]);
    const silent = await playerOn(contextOf().context);
    silent.play(planOf(SOUNDING), { ...USUAL, muted: true }, nobody);
    expect(heard.plucks).toHaveLength(1);
  });

  test('does not end a tap that names no string, nor does one of the next five', async () => {
    const player = await playerOn(contextOf().context);
    for (let tap = 0; tap < 7; tap++) player.pluck(60);
    expect(new Set(heard.strings).size).toBe(6);
    expect(heard.strings[6]).toBe(heard.strings[0]);
    // No string of an instrument is among them.
    expect(Math.min(...heard.strings)).toBeGreaterThan(9);
  });

  test('and a tap are plucked at the reference pitch', async () => {
    const { context, advance } = contextOf();
    const player = await playerOn(context);
    player.reference = 432;
    player.play(planOf(SOUNDING), USUAL, nobody);
    advance(10);
    player.pluck(57, 3);
    expect(heard.plucks.map(({ midi }) => midi)).toEqual([60, 64, 67, 57]);
    expect(new Set(heard.plucks.map(({ reference }) => reference))).toEqual(new Set([432]));
  });
});

describe('the click', () => {
  const clicked = async (click: boolean) => {
    const { context, advance } = contextOf();
    const player = await playerOn(context);
    player.play(planOf(SOUNDING, { countIn: 4, subdivision: 2 }), { ...USUAL, click }, nobody);
    advance(20);
    return heard.clicks.map(({ time, gain }) => [Math.round(100 * (time - 1.02)) / 100, gain]);
  };
  // The first beat of a bar is loudest, what lies between beats softest.
  const counted = [
    [0, 0.25],
    [1, 0.15],
    [2, 0.15],
    [3, 0.15],
  ];

  test('counts a bar in whether or not it goes on', async () => {
    expect(await clicked(false)).toEqual(counted);
  });

  test('is louder on the first beat of a bar than on the others, and softest between them', async () => {
    expect(await clicked(true)).toEqual([
      ...counted,
      [4, 0.25],
      [4.5, 0.07],
      [5, 0.15],
      [5.5, 0.07],
      [6, 0.15],
      [6.5, 0.07],
    ]);
  });
});

describe('a setting', () => {
  async function ready() {
    vi.resetModules();
    vi.doMock('../../src/sound/player.ts', () => ({
      openPlayer: async () =>
        (heard.player = {
          setLevel: (level: number) => heard.levels.push(level),
          reference: 440,
        } as never),
    }));
    class Context {
      readonly state = 'running';
      resume = async () => {};
      addEventListener() {}
    }
    vi.stubGlobal('AudioContext', Context);
    vi.stubGlobal('document', { addEventListener() {} });
    vi.stubGlobal('navigator', {});
    const sound = await import('../../src/sound/index.ts');
    sound.unlock();
    await vi.waitFor(() => expect(sound.soundState.value).toBe('ready'));
    return sound;
  }

  test('of loudness is heard at once: half of it a quarter of the amplitude, muted nothing', async () => {
    const sound = await ready();
    const last = () => heard.levels.at(-1);
    sound.volume.value = 1;
    expect(last()).toBe(1);
    sound.volume.value = 0.5;
    expect(last()).toBe(0.25);
    sound.muted.value = true;
    expect(last()).toBe(0);
    sound.volume.value = 0.9;
    expect(last()).toBe(0);
    sound.muted.value = false;
    expect(last()).toBeCloseTo(0.81, 9);
    sound.volume.value = 0;
    expect(last()).toBe(0);
  });

  test('of the reference pitch is heard from 430 to 450 Hz and not beyond', async () => {
    const sound = await ready();
    for (const [asked, played] of [
      [440, 440],
      [432, 432],
      [430, 430],
      [429, 430],
      [450, 450],
      [451, 450],
    ]) {
      sound.reference.value = asked!;
      expect(heard.player!.reference).toBe(played);
    }
    vi.doUnmock('../../src/sound/player.ts');
    vi.unstubAllGlobals();
  });
});
