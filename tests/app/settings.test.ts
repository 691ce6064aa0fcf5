import { describe, expect, it } from 'vitest';
import { USUAL } from '../../src/app/settings.ts';
import { readSettings } from '../../src/app/storedSettings.ts';

describe('settings as they were stored', () => {
  it('come back as they were', () => {
    const chosen = { ...USUAL, naming: 'german', volume: 0, theme: 'dark' } as const;
    expect(readSettings(JSON.parse(JSON.stringify(chosen)))).toEqual(chosen);
  });

  it('are, before anybody chose, these', () => {
    expect(USUAL).toEqual({
      naming: 'english',
      chordNames: true,
      numerals: true,
      reasons: true,
      volume: 0.7,
      muted: false,
      keySound: 'cadence',
      reference: 440,
      theme: 'auto',
      hand: 'lesson',
      report: { name: '' },
      guitar: {
        inHand: false,
        told: false,
        byItself: true,
        spoken: false,
        tuned: null,
        delay: null,
      },
      once: { offline: false, install: false, rounds: 0 },
    });
  });

  // What is kept, and what is beyond: then it is as usual.
  it.each([
    ['volume', [0, 0.35, 1], [-0.01, 1.01]],
    ['reference', [430, 432, 444, 450], [429.9, 450.1]],
    ['naming', ['english', 'german', 'solfege', 'movable', 'degrees'], ['french']],
    ['keySound', ['cadence', 'drone', 'chord'], ['chords']],
    ['theme', ['auto', 'light', 'dark'], ['black']],
    ['hand', ['lesson', 'right', 'left'], ['both']],
  ] as const)('keep %s within its bounds', (name, kept, beyond) => {
    for (const value of kept) expect(readSettings({ ...USUAL, [name]: value })[name]).toBe(value);
    for (const value of beyond)
      expect(readSettings({ ...USUAL, [name]: value })[name]).toBe(USUAL[name]);
  });

  it('keep of the guitar a delay of up to a second and a tuning of up to half a semitone', () => {
    const read = (part: object) => readSettings({ ...USUAL, guitar: { ...USUAL.guitar, ...part } });
    const tuned = (offset: number) => ({ at: 5, instrument: 'guitar', offset });
    for (const delay of [0, 0.12, 1]) expect(read({ delay }).guitar.delay).toBe(delay);
    for (const delay of [-0.01, 1.01]) expect(read({ delay }).guitar.delay).toBeNull();
    for (const offset of [-50, 50])
      expect(read({ tuned: tuned(offset) }).guitar.tuned).toEqual(tuned(offset));
    expect(read({ tuned: tuned(50.1) }).guitar.tuned).toBeNull();
  });

  it('are as usual, each by itself, where they are missing or not understood', () => {
    for (const name of Object.keys(USUAL)) {
      for (const odd of [null, NaN, -1, 'constructor', '__proto__', {}, []]) {
        expect(readSettings({ ...USUAL, muted: true, [name]: odd })).toEqual({
          ...USUAL,
          muted: name !== 'muted',
        });
      }
    }
    for (const odd of [null, undefined, 'settings', 5, [], {}]) {
      expect(readSettings(odd)).toEqual(USUAL);
    }
  });
});
