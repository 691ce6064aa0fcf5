import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trace } from '../../src/cards/trace/index.ts';
import { difficulty, groupStarts } from '../../src/cards/trace/stepLine.ts';
import { fingering } from '../../src/neck/fingering.ts';
import { handPlaces } from '../../src/cards/trace/explain.ts';
import { midiAt } from '../../src/neck/place.ts';
import { chordOn } from '../../src/theory/chord.ts';
import { degreeOf } from '../../src/theory/key.ts';
import { chroma } from '../../src/theory/note.ts';
import { toNumber } from '../../src/theory/rhythm.ts';
import { deckIn } from './decks.ts';
import { itemIn, itemsIn } from './items.ts';

const triplets = ['Bb major', 'G minor', 'F# major', 'D dorian', 'C harmonic minor'].flatMap(
  (key) => itemsIn(trace, deckIn(key, ['triad', 'seventh', 'ninth'])),
);
const eighths = triplets.map(({ id }) => itemIn(trace, `${id}:eighths`)!);
const items = [...triplets, ...eighths];
/** The most that a phrase may cost a hand, a note, in the units of the fingering's cost. */
const HAND = 2;

const cards = fc
  .tuple(fc.constantFrom(...items), fc.integer({ min: 0, max: 2 ** 32 - 1 }))
  .map(([item, seed]) => trace.ask(item, seed));

describe('a phrase to be traced', () => {
  it('has three to twelve even notes, the last one long, each of its arpeggio or known for what it is', () => {
    fc.assert(
      fc.property(cards, ({ phrase, line, key, item }) => {
        const beat = ['triad', 'seventh'].includes(item.size) ? 3 : 6;
        const group = item.rhythm === 'eighths' ? 4 : beat;
        const part = item.rhythm === 'eighths' ? 2 : 3;
        expect(phrase.notes.length / group).toBe(line.degrees.length);
        expect(phrase.notes.length).toBeLessThanOrEqual(12);
        expect(toNumber(phrase.notes.at(-1)!.length)).toBe(1);
        const size = item.id.split(':')[3] as 'triad';
        phrase.notes.forEach((note, index) => {
          expect(toNumber(note.at)).toBeCloseTo(index / part, 12);
          expect(note.midi % 12).toBe(chroma(note.name));
          expect(degreeOf(key, note.name)).toBe(Number(pathOf(line.steps)[index]));
          const chord = chordOn(key, line.degrees[Math.floor(index / group)]!, size);
          if (index !== line.embellishment?.index) expect(chord.notes).toContain(note.name);
        });
      }),
    );
  });

  it('begins on the arpeggio of its item', () => {
    fc.assert(
      fc.property(cards, ({ line, item }) => {
        expect(line.degrees[0]).toBe(item.degree);
      }),
    );
  });

  it('names no arpeggio that is not heard: each has its root, and what makes it that chord', () => {
    fc.assert(
      fc.property(cards, ({ key, line, item, phrase }) => {
        const starts = groupStarts(line);
        line.degrees.forEach((degree, group) => {
          const chord = chordOn(key, degree, item.size);
          const heard = phrase.notes
            .slice(starts[group], starts[group + 1])
            .map(({ name }) => name)
            .filter((_, i) => starts[group]! + i !== line.embellishment?.index);
          expect(heard).toContain(chord.root);
          // A chord of five notes and more is told by its highest: without it, it is a smaller one.
          if (item.size === 'ninth') expect(heard).toContain(chord.notes.at(-1));
        });
      }),
      { numRuns: 400 },
    );
  });

  // In eighths four notes have to do: the members that make the chord what it is, each so many steps above its root.
  it.each([
    ['ninth', '0 2 6 8'],
    ['eleventh', '0 6 8 10'],
    ['thirteenth', '0 2 6 12'],
  ])('of a %s in eighths is %s steps above the root', (size, steps) => {
    for (const degree of [1, 2, 4])
      for (const [contour, order] of [
        ['up', [0, 1, 2, 3]],
        ['down', [3, 2, 1, 0]],
      ] as const) {
        const id = `trace:Bb major:${degree}:${size}:guitar:${contour}:72:eighths`;
        const { line } = trace.ask(itemIn(trace, id)!, 2);
        const first = line.steps.slice(0, 4);
        const root = Math.min(...first);
        const wanted = order.map((one) => Number(steps.split(' ')[one]));
        expect(
          first.map((step) => step - root),
          id,
        ).toEqual(wanted);
        expect((((root % 7) + 7) % 7) + 1, id).toBe(degree);
      }
  });

  // In triplets six: of a ninth also what lies under the root, of a thirteenth all but the eleventh.
  it.each([
    ['ninth', '-3 0 2 4 6 8'],
    ['eleventh', '0 2 4 6 8 10'],
    ['thirteenth', '0 2 4 6 8 12'],
  ])('of a %s in triplets is %s steps from the root', (size, steps) => {
    const id = `trace:Bb major:2:${size}:guitar:up:72`;
    const { line } = trace.ask(itemIn(trace, id)!, 2);
    const numbers = steps.split(' ').map(Number);
    const root = line.steps[0]! - numbers[0]!;
    expect(line.steps.slice(0, 6).map((step) => step - root)).toEqual(numbers);
    expect((((root % 7) + 7) % 7) + 1).toBe(2);
  });

  it('has embellishing tones that are stepped into and out of', () => {
    let found = 0;
    fc.assert(
      fc.property(cards, ({ line }) => {
        if (!line.embellishment) return;
        found++;
        const { index, kind } = line.embellishment;
        const [before, tone, after] = line.steps.slice(index - 1, index + 2);
        expect(Math.abs(tone! - before!)).toBe(1);
        expect(after! - tone!).toBe(kind === 'passing' ? tone! - before! : before! - tone!);
      }),
      { numRuns: 800, seed: 1 },
    );
    expect(found).toBeGreaterThan(20);
  });

  it('is easier to hear on even seeds than on odd ones', () => {
    const mean = (odd: number) => {
      const hard = items.map((item, i) => {
        const { line, phrase } = trace.ask(item, 2 * i + odd);
        return difficulty(line, phrase.tempo);
      });
      return hard.reduce((sum, value) => sum + value, 0) / hard.length;
    };
    expect(mean(1)).toBeGreaterThan(1.5 * mean(0));
  });

  it('costs a hand no more than a stated bound a note', () => {
    fc.assert(
      fc.property(cards, (card) => {
        const played = fingering(card.instrument, card.phrase.notes);
        expect(played.playable).toBe(true);
        if (played.playable) expect(played.cost / played.notes.length).toBeLessThan(HAND);
      }),
      { numRuns: 300 },
    );
  });

  it('is another phrase for every item, so that no round has two alike', () => {
    const one = triplets.filter(({ id }) => id.includes('Bb major') && id.includes('triad'));
    for (let seed = 0; seed < 40; seed++) {
      const paths = one.map((item) =>
        trace
          .ask(item, seed)
          .phrase.notes.map(({ midi }) => midi)
          .join(' '),
      );
      expect(new Set(paths).size).toBe(one.length);
    }
  });

  it('offers four different paths, one of them right', () => {
    fc.assert(
      fc.property(cards, (card) => {
        const paths = card.choices.map(({ path }) => path);
        expect(new Set(paths).size).toBe(4);
        expect(paths.filter((path) => trace.judge(card, path).right)).toEqual([card.path]);
        const { length } = card.path.split(' ');
        for (const path of paths) expect(path.split(' ')).toHaveLength(length);
      }),
    );
  });

  it('is shown at places that sound it', () => {
    fc.assert(
      fc.property(cards, (card) => {
        const sounds = handPlaces(card).map((place) => midiAt(card.instrument, place));
        expect(sounds).toEqual(card.phrase.notes.map(({ midi }) => midi));
      }),
      { numRuns: 60 },
    );
  });

  it('offers paths that all begin on the same note, nearer to one another on odd seeds', () => {
    const apart = { near: 0, far: 0 };
    fc.assert(
      fc.property(cards, ({ choices, line, seed }) => {
        expect(new Set(choices.map(({ heights }) => heights[0]))).toEqual(new Set([line.steps[0]]));
        const off = choices.flatMap(({ heights }) =>
          heights.map((height, i) => Math.abs(height - line.steps[i]!)),
        );
        apart[seed % 2 === 1 ? 'near' : 'far'] += off.reduce((a, b) => a + b, 0) / off.length;
      }),
      { numRuns: 400, seed: 3 },
    );
    expect(apart.far).toBeGreaterThan(1.3 * apart.near);
  });
});

const pathOf = (steps: readonly number[]) =>
  steps.map((step) => String((((step % 7) + 7) % 7) + 1));
