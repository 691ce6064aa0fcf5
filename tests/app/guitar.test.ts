import { afterEach, describe, expect, it, vi } from 'vitest';
import { delayed, undelayed } from '../../src/app/guitar/late.ts';
import { canSpeak, speak, spokenWords } from '../../src/app/guitar/spoken.ts';
import { tuningOf, withReading, type StringReadings } from '../../src/app/guitar/tuning.ts';
import {
  centsLabel,
  isInTune,
  stringWords,
  tuningWords,
} from '../../src/app/guitar/tuningWords.ts';
import { isPutOff } from '../../src/app/round/unheard.ts';
import type { Performance } from '../../src/listening/listening.ts';

const STANDARD = [64, 59, 55, 50, 45, 40];
const tuned = (readings: StringReadings) => tuningOf(readings, isInTune);

describe('what the strings of a guitar come to', () => {
  it('is ready where each is within five cents', () => {
    expect(tuned([0, 5, -5, 2, -1, 3])).toEqual({ state: 'ready', offset: 1 });
    expect(tuned([0, 6, 0, 0, 0, 0]).state).toBe('together');
  });

  it('is open until every string was heard', () => {
    expect(tuned([0, 0, null, 0, 0, 0]).state).toBe('open');
    expect(tuned([]).state).toBe('open');
  });

  it('may be left as it is where the whole guitar is off together, and is counted in', () => {
    expect(tuned([-12, -12, -12, -12, -12, -12])).toEqual({ state: 'together', offset: -12 });
    // A = 432 Hz is 31.8 cents under A = 440: every string is off, and none is out of tune with another.
    const flat = 1200 * Math.log2(432 / 440);
    expect(tuned(STANDARD.map(() => flat))).toEqual({ state: 'together', offset: flat });
    expect(tuned([20, 22, 35, 28, 30, 26]).state).toBe('together');
  });

  it('is not counted in where the next semitone is as near', () => {
    expect(tuned([-48, -50, -52, -49, -50, -51]).state).toBe('far');
    expect(tuned(STANDARD.map(() => -100)).state).toBe('far');
  });

  it('is apart where one string is out of tune with the others, wherever they are', () => {
    expect(tuned([0, 0, 0, 0, 0, 16]).state).toBe('apart');
    expect(tuned([-30, -30, -30, -30, -30, 0]).state).toBe('apart');
    // One that is out does not pull the median along.
    expect(tuned([-12, -12, -12, -12, -12, 90]).offset).toBe(-12);
  });

  it('hears strings that are tuned alike as one', () => {
    const readings = withReading([null, null, null], [62, 57, 62], { string: 0, cents: 4 });
    expect(readings).toEqual([4, null, 4]);
  });
});

describe('words for a string', () => {
  it('have an arrow the way the pitch has to go, and never colour alone', () => {
    expect(stringWords(-30)).toEqual({ state: 'off', arrow: '↑', words: 'too low: tighten' });
    expect(stringWords(30)).toEqual({ state: 'off', arrow: '↓', words: 'too high: loosen' });
    expect(stringWords(-12)).toMatchObject({ state: 'near', arrow: '↑' });
    expect(stringWords(5)).toMatchObject({ state: 'ready', words: 'in tune' });
    expect(stringWords(null).state).toBe('unheard');
    expect([centsLabel(-11.6), centsLabel(3), centsLabel(-0.4)]).toEqual(['−12', '+3', '0']);
  });

  it('say for the whole guitar how far it is off', () => {
    expect(tuningWords({ state: 'together', offset: -31.8 })).toContain('32 cents low');
    expect(tuningWords({ state: 'together', offset: 0.2 })).not.toContain('0 cents');
    expect(tuningWords({ state: 'far', offset: 60 })).toContain('60 cents high');
  });
});

it('the delay is put into what is due and taken out of what is told', () => {
  expect(delayed({ due: [1, 2] }, 0.25)).toEqual({ due: [1.25, 2.25] });
  expect(delayed({}, 0.25)).toEqual({});
  const told: unknown[] = [];
  const follower = undelayed({ onOver: (over) => told.push(over) }, 0.25);
  expect(follower.onRight).toBeUndefined();
  const performance: Performance = {
    notes: [{ verdict: 'right', time: 1.25 }, { verdict: 'missing' }, null],
    extras: [{ time: 2, heard: 60, after: 0 }],
    restarts: 0,
    over: true,
  };
  follower.onOver!(performance);
  expect(told).toEqual([
    {
      ...performance,
      notes: [{ verdict: 'right', time: 1 }, { verdict: 'missing' }, null],
      extras: [{ time: 1.75, heard: 60, after: 0 }],
    },
  ]);
});

it('what was not heard comes again once, after another card, and no more in the round', () => {
  const once = [{ item: 'a', after: 3 }];
  expect(isPutOff(once, 'a', 3)).toBe(true);
  expect(isPutOff(once, 'a', 4)).toBe(false);
  expect(isPutOff(once, 'b', 3)).toBe(false);
  expect(isPutOff([...once, { item: 'a', after: 5 }], 'a', 9)).toBe(true);
});

it.each([
  ['Place B♭', 'Place B flat'],
  ['Place B♭maj7', 'Place B flat major seventh'],
  ['Place Cm7', 'Place C minor seventh'],
  ['Place E♭m', 'Place E flat minor'],
  ['Play Aø7 up', 'Play A half-diminished up'],
  ['Place F♯°7', 'Place F sharp diminished seventh'],
  ['Place F7', 'Place F seventh'],
  ['Place E♭+ up', 'Place E flat augmented up'],
  ['Place B°', 'Place B diminished'],
  ['Fill in the missing note', 'Fill in the missing note'],
])('%s is spoken as %s', (question, spoken) => {
  expect(spokenWords(question)).toBe(spoken);
});

describe('a question that is spoken', () => {
  const said: { text: string; voice: string; lang: string }[] = [];
  class Utterance extends EventTarget {
    voice = { name: '' };
    lang = '';
    constructor(readonly text: string) {
      super();
    }
  }
  const voice = (name: string, lang: string, localService: boolean) => ({
    name,
    lang,
    localService,
  });
  const speaking = (...voices: ReturnType<typeof voice>[]) => {
    said.length = 0;
    vi.stubGlobal('SpeechSynthesisUtterance', Utterance);
    vi.stubGlobal('speechSynthesis', {
      getVoices: () => voices,
      cancel() {},
      speak(utterance: Utterance) {
        said.push({ text: utterance.text, voice: utterance.voice.name, lang: utterance.lang });
        utterance.dispatchEvent(new Event('end'));
      },
    });
  };
  afterEach(() => vi.unstubAllGlobals());

  // A voice that is elsewhere is sent what it is to say.
  it.each([
    [[voice('far', 'en-US', false)], null],
    [[voice('far', 'en-US', false), voice('near', 'en-GB', true)], 'near'],
    [[voice('fern', 'de-DE', true), voice('near', 'en', true)], 'near'],
    [[voice('fern', 'de-DE', true)], null],
    [[voice('nah', 'enm', true)], null],
    [[], null],
  ])('of voices %o is said by %s', async (voices, by) => {
    speaking(...voices);
    expect(canSpeak()).toBe(by !== null);
    await speak('Place ii');
    expect(said.map((one) => [one.text, one.voice])).toEqual(by === null ? [] : [['Place ii', by]]);
  });

  it('is not waited for where there is no speech at all', async () => {
    expect(canSpeak()).toBe(false);
    await speak('Place ii');
  });

  it('is waited for a second and a half until it begins, and ten seconds until it ends', async () => {
    vi.useFakeTimers();
    let utterance: EventTarget | undefined;
    speaking(voice('near', 'en-GB', true));
    Object.assign(speechSynthesis, { speak: (one: EventTarget) => (utterance = one) });
    const over = vi.fn<() => void>();
    void speak('Place ii').then(over);
    await vi.advanceTimersByTimeAsync(1499);
    expect(over).not.toHaveBeenCalled();
    utterance!.dispatchEvent(new Event('start'));
    await vi.advanceTimersByTimeAsync(9999);
    expect(over).not.toHaveBeenCalled();
    await vi.advanceTimersByTimeAsync(1);
    expect(over).toHaveBeenCalledOnce();
    const silent = vi.fn<() => void>();
    void speak('Place IV').then(silent);
    await vi.advanceTimersByTimeAsync(1500);
    expect(silent).toHaveBeenCalledOnce();
    vi.useRealTimers();
  });
});
