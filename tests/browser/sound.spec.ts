import { expect, test, type Page } from '@playwright/test';
import { print, servePage, type Served } from './sound/serve.ts';

/** What the player plays, rendered in the browser's offline context and measured. */
test.describe.configure({ mode: 'default' });

let served: Served;
let page: Page;

test.beforeAll(async ({ browser }) => {
  served = await servePage();
  page = await browser.newPage();
  await page.goto(served.url);
});

test.afterAll(async () => {
  await page.close();
  await served.close();
});

for (const tuning of [
  { rate: 44100, reference: 440 },
  { rate: 48000, reference: 432 },
]) {
  test(`every note from B0 to E6 is in tune at A = ${tuning.reference}, ${tuning.rate} Hz`, async () => {
    const errors = await page.evaluate(async ({ rate, reference }) => {
      const { bare, controls, frequency, heard, LEAD, measure, nobody, render } =
        await window.page.offline();
      const found: { midi: number; cents: number; heard: number }[] = [];
      for (let lowest = 23; lowest <= 88; lowest += 11) {
        const midis = Array.from({ length: 11 }, (_, i) => lowest + i);
        const plucks = midis.map((midi, i) => ({ at: 1.5 * i, midi, strength: 0.8, string: 1 }));
        const samples = await render(1.5 * 11, rate, (player) => {
          player.reference = reference;
          player.play(bare(plucks), controls(), nobody);
        });
        midis.forEach((midi, i) => {
          const hertz = frequency(midi, reference);
          const at = LEAD + 1.5 * i;
          const { cents } = measure.partial(samples, rate, hertz, at + 0.1, at + 1.4);
          const start = Math.round((at + 0.2) * rate);
          const part = samples.slice(start, start + (hertz < 100 ? 4096 : 2048));
          found.push({ midi, cents, heard: 1200 * Math.log2(heard(part, rate) / hertz) });
        });
      }
      return found;
    }, tuning);
    const cents = errors.map((error) => Math.abs(error.cents));
    print(`cents off, A = ${tuning.reference}`, {
      worst: Math.max(...cents),
      mean: cents.reduce((a, b) => a + b, 0) / cents.length,
      worstAsPitchyHears: Math.max(...errors.map((error) => Math.abs(error.heard))),
    });
    expect(errors).toHaveLength(66);
    expect(Math.max(...cents)).toBeLessThan(0.5);
    // McLeod's method on 46 ms is not that fine; a semitone is 100.
    for (const error of errors) expect(Math.abs(error.heard), `${error.midi}`).toBeLessThan(5);
  });
}

test('partials fade the faster the higher they are', async () => {
  const notes = await page.evaluate(async () => {
    const { bare, frequency, LEAD, measure, render } = await window.page.offline();
    const found = [];
    for (const midi of [23, 28, 40, 45, 52, 59, 64, 76, 88]) {
      const samples = await render(1, 44100, bare([{ at: 0, midi, strength: 0.8, string: 1 }]));
      // High partials are gone soon.
      const until = LEAD + Math.min(0.95, 0.2 + 40 / frequency(midi));
      const first = frequency(midi);
      const decays = [1, 2, 3, 4, 5]
        .map((k) => measure.partial(samples, 44100, k * first, LEAD + 0.06, until, first))
        .filter(({ level }) => level > 1e-3)
        .map(({ decay }) => decay);
      found.push({ midi, decays });
    }
    return found;
  });
  print('seconds to −60 dB, partials 1 to 5', notes);
  for (const { midi, decays } of notes) {
    expect(decays.length, `${midi}`).toBeGreaterThan(1);
    for (let k = 1; k < decays.length; k++) {
      expect(decays[k]!, `partial ${k + 1} of ${midi}`).toBeLessThan(decays[k - 1]!);
    }
  }
});

test('six notes at once and a click stay under full scale', async () => {
  const peaks = await page.evaluate(async () => {
    const { measure, planOf, render } = await window.page.offline();
    const of = async (midis: number[]) => {
      const notes = midis.map((midi, i) => ({ midi, at: 0, length: 1, string: i, strength: 1 }));
      return measure.peak(await render(1, 44100, planOf({ tempo: 60, notes })), 44100);
    };
    return {
      one: await of([40]),
      chord: await of([40, 47, 52, 56, 59, 64]),
      alike: await of([52, 52, 52, 52, 52, 52]),
    };
  });
  print('peaks at full strength, with a click', peaks);
  expect(peaks.one).toBeGreaterThan(0.2);
  expect(peaks.chord).toBeLessThan(1);
  expect(peaks.alike).toBeLessThan(1);
});

test('a note ends without a step: by itself, by the hand, by the next on its string', async () => {
  const ends = await page.evaluate(async () => {
    const { bare, LEAD, measure, render } = await window.page.offline();
    const rate = 44100;
    const end = LEAD + 0.3;
    const found = [];
    for (const midi of [28, 40, 52, 64, 76, 88]) {
      const pluck = { at: 0, midi, strength: 0.8, string: 1 };
      const silent = { ...pluck, at: 0.3, strength: 0 };
      const free = await render(4.5, rate, bare([pluck]));
      const damped = await render(0.6, rate, bare([pluck], [{ at: 0.3, string: 1 }]));
      const cut = await render(0.6, rate, bare([pluck, silent]));
      const before = measure.peak(free, rate, end - 0.02, end);
      found.push({
        midi,
        // Largest differences between neighbouring samples, as parts of the amplitude before the end.
        itself: measure.step(free, rate, LEAD + 1.5, 4.5) / before,
        free: measure.step(free, rate, end - 0.03, end + 0.03) / before,
        damped: measure.step(damped, rate, end, end + 0.1) / before,
        cut: measure.step(cut, rate, end, end + 0.1) / before,
        // What is left of that amplitude.
        cutLeft: measure.peak(cut, rate, end + 0.005) / before,
        dampedLeft: measure.peak(damped, rate, end + 0.1) / before,
      });
    }
    return found;
  });
  for (const end of ends) {
    print('ends', end);
    expect(end.itself).toBeLessThan(end.free);
    // A fade adds its own slope, of a thirtieth a sample at its steepest.
    expect(end.damped).toBeLessThan(end.free + 0.035);
    expect(end.cut).toBeLessThan(end.free + 0.035);
    expect(end.cutLeft).toBeLessThan(0.003);
    expect(end.dampedLeft).toBeLessThan(0.003);
  }
});

test('the onsets of a triplet phrase are where they belong, to a sample', async () => {
  for (const beats of [60, 120, 200]) {
    const late = await page.evaluate(async (tempo) => {
      const { LEAD, measure, planOf, render } = await window.page.offline();
      const rate = 44100;
      const errors: number[] = [];
      // Every other note, so that there is silence between them.
      for (const first of [0, 1]) {
        const indices = Array.from({ length: 12 }, (_, i) => 2 * i + first);
        const notes = indices.map((i) => ({
          midi: 45 + ((i * 7) % 36),
          at: i / 3,
          length: 0.2,
          string: 1 + (i % 6),
        }));
        const plan = { ...planOf({ tempo, notes }), clicks: [] };
        const samples = await render(LEAD + (8.5 * 60) / tempo, rate, plan);
        const found = measure.onsets(samples, rate, 0.02, 3e-5);
        if (found.length !== 12) throw new Error(`${found.length} onsets of 12 at ${tempo}`);
        found.forEach((time, k) => {
          errors.push((time - LEAD - ((indices[k]! / 3) * 60) / tempo) * rate);
        });
      }
      return errors;
    }, beats);
    print(`onsets at ${beats}, samples late`, {
      least: Math.min(...late),
      most: Math.max(...late),
    });
    // The first sample of a note is the beginning of its pulse, which is 0: one sample of that, one of the raster.
    expect(Math.max(...late) - Math.min(...late)).toBeLessThanOrEqual(1.001);
    expect(Math.min(...late)).toBeGreaterThan(-1.001);
    expect(Math.max(...late)).toBeLessThan(2.001);
  }
});

test('a microphone that listens below 3.5 kHz hears no click', async () => {
  const levels = await page.evaluate(async () => {
    const { LEAD, measure, planOf, render } = await window.page.offline();
    const silence = { midi: 40, at: 0, length: 1, strength: 0 };
    const samples = await render(0.5, 44100, planOf({ tempo: 60, notes: [silence] }));
    const start = Math.round(LEAD * 44100);
    return measure.spectrum(samples.slice(start, start + 1024), 44100, 25);
  });
  const below = levels.slice(0, 3500 / 25);
  const energy = (of: number[]) => of.reduce((sum, level) => sum + level ** 2, 0);
  const figures = {
    peakHertz: levels.indexOf(Math.max(...levels)) * 25,
    strongestBelow: 20 * Math.log10(Math.max(...below) / Math.max(...levels)),
    energyBelow: 10 * Math.log10(energy(below) / energy(levels)),
  };
  print('the click below 3.5 kHz, dB', figures);
  expect(figures.peakHertz).toBeGreaterThan(5800);
  expect(figures.strongestBelow).toBeLessThan(-40);
  expect(figures.energyBelow).toBeLessThan(-40);
});

test('strength, slide, hammer-on and pull-off each sound different from a pluck', async () => {
  const sounds = await page.evaluate(async () => {
    const { LEAD, measure, planOf, render } = await window.page.offline();
    const rate = 44100;
    const of = async (second: object) => {
      const notes = [
        { midi: 57, at: 0, length: 0.5, string: 3 },
        { midi: 60, at: 0.5, length: 1, string: 3, ...second },
      ];
      const plan = { ...planOf({ tempo: 60, notes }), clicks: [] };
      const samples = await render(1.2, rate, plan);
      const start = Math.round((LEAD + 0.5) * rate);
      const attack = samples.slice(start, start + 2048);
      return {
        // Energy above 2 kHz, dB.
        brightness: measure.above(measure.spectrum(attack, rate, 50), 40),
        level: measure.loudest(attack, rate, 0.02),
        // What sounds of the frets between, just before.
        passing: measure.partial(samples, rate, 277.18, LEAD + 0.4, LEAD + 0.55).level,
      };
    };
    return {
      pluck: await of({}),
      soft: await of({ strength: 0.4 }),
      hard: await of({ strength: 1 }),
      slide: await of({ articulation: 'slide' }),
      hammer: await of({ articulation: 'hammer-on' }),
      pull: await of({ articulation: 'pull-off' }),
    };
  });
  for (const [name, figures] of Object.entries(sounds)) print(name, figures);
  const { pluck, soft, hard, slide, hammer, pull } = sounds;
  expect(soft.brightness).toBeLessThan(pluck.brightness - 3);
  expect(hard.brightness).toBeGreaterThan(pluck.brightness);
  expect(soft.level).toBeLessThan(pluck.level);
  expect(hard.level).toBeGreaterThan(pluck.level);
  expect(pull.brightness).toBeLessThan(pluck.brightness - 3);
  expect(hammer.brightness).toBeLessThan(pull.brightness - 3);
  expect(hammer.level).toBeLessThan(0.8 * pluck.level);
  expect(slide.level).toBeLessThan(0.8 * pluck.level);
  expect(slide.passing).toBeGreaterThan(3 * hammer.passing);
});

test('a key made heard is no louder than a phrase', async () => {
  const levels = await page.evaluate(async () => {
    const { keySounding, LEAD, measure, planOf, render } = await window.page.offline();
    const rate = 44100;
    const loudness = async (sounding: Parameters<typeof planOf>[0]) => {
      const plan = { ...planOf(sounding), clicks: [] };
      const samples = await render(LEAD + (plan.end * 60) / plan.tempo, rate, plan);
      return measure.loudest(samples, rate, 0.1);
    };
    const phrases: number[] = [];
    for (const lowest of [40, 52, 60, 69]) {
      const notes = [0, 4, 7, 12, 7, 4].map((above, i) => ({
        midi: lowest + above,
        at: i / 3,
        length: 1 / 3,
        string: 1 + (i % 3),
      }));
      phrases.push(await loudness({ tempo: 100, notes }));
    }
    const keys: { [how: string]: number[] } = { cadence: [], drone: [], chord: [] };
    for (const tonic of ['C', 'Db', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B']) {
      for (const how of ['cadence', 'drone', 'chord'] as const) {
        keys[how]!.push(await loudness(keySounding({ tonic, scale: 'major' }, how)));
      }
    }
    return { phrases, keys };
  });
  const quietest = Math.min(...levels.phrases);
  const loudest = (values: number[]) => 20 * Math.log10(Math.max(...values) / quietest);
  const figures = {
    phrases: levels.phrases,
    cadence: loudest(levels.keys['cadence']!),
    drone: loudest(levels.keys['drone']!),
    chord: loudest(levels.keys['chord']!),
  };
  print('loudest 0.1 s of a key, dB over the quietest phrase', figures);
  for (const how of ['cadence', 'drone', 'chord'] as const) expect(figures[how]).toBeLessThan(0);
});
