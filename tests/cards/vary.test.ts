import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { vary } from '../../src/cards/vary/index.ts';
import { lineDistance, distinguishable } from '../../src/cards/vary/distinguishable.ts';
import { phraseSound } from '../../src/cards/frame/phraseSound.ts';
import { midiAt } from '../../src/neck/place.ts';
import { toNumber } from '../../src/theory/rhythm.ts';
import { stepsBetween } from '../../src/theory/variations/scaleSteps.ts';
import { FERRY, phraseDeck } from './phrases.ts';
import { itemsIn } from './items.ts';

const drills = [{ kind: 'vary' }];
const items = [
  ...itemsIn(vary, phraseDeck({ drills })),
  ...itemsIn(vary, phraseDeck({ key: 'G minor', phrases: [FERRY], drills })),
];
const cards = fc
  .tuple(fc.constantFrom(...items), fc.integer({ min: 0, max: 2 ** 32 - 1 }))
  .map(([item, seed]) => vary.ask(item, seed));

describe('vary', () => {
  it('offers four variations no two of which sound alike, nor like the phrase', () => {
    fc.assert(
      fc.property(cards, ({ choices, excerpt }) => {
        const sounds = [excerpt, ...choices.map(({ phrase }) => phrase)].map(({ notes }) =>
          notes.map(({ midi, at }) => `${midi}@${toNumber(at)}`).join(' '),
        );
        expect(new Set(sounds).size).toBe(5);
        expect(new Set(choices.map(({ name }) => name)).size).toBe(4);
      }),
    );
  });

  it('offers such as begin on one note, each moved there as its name says', () => {
    fc.assert(
      fc.property(cards, ({ choices, excerpt, key }) => {
        const firsts = choices.map(({ phrase }) => phrase.notes[0]!.midi);
        expect(new Set(firsts).size).toBe(1);
        const plain = distinguishable(excerpt);
        for (const { name, phrase } of choices) {
          const [what, by = what] = name.split(', ') as [string, string?];
          const from = plain.find((one) => one.name === what)?.phrase ?? excerpt;
          const [, way, steps] = /^(up|down) (\d+) steps?$/.exec(by) ?? [];
          const moved = (way === 'down' ? -1 : 1) * Number(steps ?? 0);
          const whole = name === what && from !== excerpt ? 0 : moved;
          expect(stepsBetween(key, from.notes[0]!, phrase.notes[0]!)).toBe(whole);
          expect(stepsBetween(key, from.notes.at(-1)!, phrase.notes.at(-1)!)).toBe(whole);
        }
      }),
    );
  });

  it('sounds the phrase, and after a beat of rest at least the variation, at places that sound it', () => {
    fc.assert(
      fc.property(cards, ({ heard, excerpt, right, instrument }) => {
        const { length } = excerpt.notes;
        expect(heard.notes.slice(0, length)).toEqual(excerpt.notes);
        const last = excerpt.notes.at(-1)!;
        const rest = toNumber(heard.notes[length]!.at) - toNumber(last.at) - toNumber(last.length);
        expect(rest).toBeGreaterThanOrEqual(1);
        expect(rest).toBeLessThan(2);
        expect(heard.notes.slice(length).map(({ midi }) => midi)).toEqual(
          right.phrase.notes.map(({ midi }) => midi),
        );
        for (const { place, midi } of right.phrase.notes)
          expect(midiAt(instrument, place!)).toBe(midi);
      }),
    );
  });

  it('offers names of nearer variations on odd seeds than on even ones', () => {
    const mean = (odd: number) => {
      const far = items.flatMap((item) =>
        Array.from({ length: 20 }, (_, i) => {
          const { choices, right } = vary.ask(item, 2 * i + odd);
          return choices
            .filter((other) => other !== right)
            .reduce((sum, { phrase }) => sum + lineDistance(phrase, right.phrase), 0);
        }),
      );
      return far.reduce((sum, value) => sum + value, 0) / far.length;
    };
    expect(mean(1)).toBeLessThan(0.8 * mean(0));
  });

  it('says which it was, and sounds after it which it was taken for', () => {
    const card = vary.ask(items[0]!, 4);
    for (const { name, phrase } of card.choices) {
      const { title, otherSound } = vary.explain(card, vary.judge(card, name), name, 'english');
      expect(title.charAt(0)).toMatch(/[A-Z]/);
      expect(title.toLowerCase()).toBe(card.right.name.toLowerCase());
      expect(otherSound).toEqual(name === card.right.name ? null : phraseSound(phrase));
    }
  });

  it('asks for every variation in time', () => {
    const names = new Set(
      Array.from({ length: 80 }, (_, seed) => vary.ask(items[0]!, seed).right.name),
    );
    expect(names.size).toBeGreaterThanOrEqual(5);
  });
});
