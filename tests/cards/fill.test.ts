import { describe, expect, it } from 'vitest';
import { fill } from '../../src/cards/fill/index.ts';
import { degreeOfPitch, pitchesOf } from '../../src/cards/fill/judge.ts';
import { fretsLeft } from '../../src/neck/instrument.ts';
import { phraseDeck } from './phrases.ts';
import { itemIn, itemsIn } from './items.ts';

const ID = 'fill:Bb major:4:triad:guitar:72 ii 3/5 2/4? 1/3 V 1/5 1/1 2/1';

describe('fill', () => {
  const card = fill.ask(itemIn(fill, ID)!, 1);

  it('leaves the note out and its time empty', () => {
    expect(card.heard.notes.map(({ midi }) => midi)).toEqual([60, 67, 69, 65, 60]);
    expect(card.heard.notes[1]!.at).toEqual({ n: 2, d: 3 });
    expect(card.heard.notes[0]!.length).toEqual({ n: 1, d: 3 });
  });

  it('says what is missing and what it is in its arpeggio; sounds the answer in its place', () => {
    const verdict = fill.judge(card, '6');
    expect(verdict).toEqual({ right: false, takenFor: '6' });
    const why = fill.explain(card, verdict, '6', 'english');
    expect(why.title).toBe('4, not 6');
    expect(why.sentence).toBe('The fourth degree is missing, E♭.');
    expect(why.detail).toBe('It is the third of ii (Cm).');
    expect(why.sound.notes.map(({ midi }) => midi)).toEqual([60, 63, 67, 69, 65, 60]);
    // The sixth degree, G, nearest to E♭ 4: the G above it.
    expect(why.otherSound!.notes.map(({ midi }) => midi)).toEqual([60, 67, 67, 69, 65, 60]);
  });

  it('says of a note of the arpeggio that it only embellishes, where the teacher ruled so', () => {
    const ruled = fill.ask(itemIn(fill, ID.replace('2/4?', '2/4~?'))!, 1);
    expect(fill.explain(ruled, fill.judge(ruled, '4'), '4', 'english').detail).toBe(
      'It only embellishes here, though ii (Cm) has it.',
    );
  });

  // The last of a group, the first of the next, one that no arpeggio there has.
  it.each([
    [6, 'ii 3/5 2/4 1/3? V 1/5 1/1 2/1', 'It is the fifth of ii (Cm).'],
    [7, 'ii 3/5 2/4 1/3 V 1/5? 1/1 2/1', 'It is the third of V (F).'],
    [3, 'ii 3/5 2/3? 2/4 V 1/5 1/1 2/1', 'It is not in ii (Cm): it only embellishes.'],
  ])('says of degree %i in %s: %s', (degree, words, detail) => {
    const one = fill.ask(itemIn(fill, `fill:Bb major:${degree}:triad:guitar:72 ${words}`)!, 1);
    const answer = String(degree);
    expect(fill.explain(one, fill.judge(one, answer), answer, 'english').detail).toBe(detail);
  });

  it('shows the whole line, the missing note as missing, others on its string and fret as they are', () => {
    const words = 'ii 3/5 2/4 1/3 V 1/5? 1/1 2/1';
    const one = fill.ask(itemIn(fill, `fill:Bb major:7:triad:guitar:72 ${words}`)!, 1);
    const { dots } = fill.explain(one, fill.judge(one, '7'), '7', 'english');
    expect(
      dots.map(({ string, fret, degree, look }) => `${string}/${fret} ${degree} ${look ?? ''}`),
    ).toEqual(['3/5 2 ', '2/4 4 ', '1/3 6 ', '1/5 7 missing', '1/1 5 ', '2/1 2 ']);
  });

  it('sounds what lies a tritone away above', () => {
    const { otherSound } = fill.explain(card, fill.judge(card, '7'), '7', 'english');
    expect(otherSound!.notes[1]!.midi).toBe(69);
  });

  it('is none of a note that nobody would miss: the first, the last, one that no degree names', () => {
    const at = (missing: number, degree: number) => {
      const places = ['3/5', '2/4', '1/3', '1/5', '1/1', '2/1'].map((one, i) =>
        i === missing ? `${one}?` : one,
      );
      const words = ['ii', ...places.slice(0, 3), 'V', ...places.slice(3)].join(' ');
      return itemIn(fill, `fill:Bb major:${degree}:triad:guitar:72 ${words}`);
    };
    const degrees = [2, 4, 6, 7, 5, 2];
    expect(degrees.map((degree, i) => at(i, degree) !== null)).toEqual([
      false,
      true,
      true,
      true,
      true,
      false,
    ]);
    // E is in no chord of these, and in no key of two flats.
    expect(itemIn(fill, 'fill:Bb major:4:triad:guitar:72 ii 3/5 2/5? 1/3')).toBeNull();
  });

  it('asks one note of every group, never the first or the last of what is heard', () => {
    const items = itemsIn(fill, phraseDeck({ drills: [{ kind: 'fill', phrases: [1] }] }));
    const cards = items.map((item) => fill.ask(item, 1));
    for (const { missing, excerpt } of cards) {
      expect(missing).toBeGreaterThan(0);
      expect(missing).toBeLessThan(excerpt.notes.length - 1);
    }
    expect(items).toHaveLength(6);
  });
});

// C4 E♭4 G4 without its G: what was answered lies as near as can be, six semitones up rather than down.
it.each([
  ['1', 70],
  ['2', 72],
  ['3', 62],
  ['4', 63],
  ['5', 65],
  ['7', 69],
])('a G that is missing and taken for %s sounds as MIDI %i', (answer, midi) => {
  const card = fill.ask(itemIn(fill, 'fill:Bb major:6:triad:guitar:72 ii 3/5 2/4 1/3? 2/4')!, 1);
  const { otherSound } = fill.explain(card, fill.judge(card, answer), answer, 'english');
  expect(otherSound!.notes.map((note) => note.midi)).toEqual([60, 63, midi, 63]);
});

describe('fill, answered by playing', () => {
  it('takes a note outside the key for its degree only where that is the one that is missing', () => {
    // The F sharp of D F♯ A, which G minor borrows, and its own F, are both a seventh degree.
    const borrowed = (words: string) =>
      fill.ask(itemIn(fill, `fill:G minor:7:triad:guitar:72 ${words}`)!, 1);
    const sharp = borrowed('V 4/0 4/4? 3/2 i 3/0 3/3 2/3');
    expect([42, 54, 66, 53].map((midi) => degreeOfPitch(sharp, midi))).toEqual([7, 7, 7, 7]);
    const plain = borrowed('VII 4/3 3/2 2/1 III 3/3 4/3? 2/3');
    expect([53, 54].map((midi) => degreeOfPitch(plain, midi))).toEqual([7, null]);
    expect(pitchesOf(sharp).includes(54)).toBe(true);
    expect(pitchesOf(plain).includes(54)).toBe(false);
  });

  const card = fill.ask(itemIn(fill, ID)!, 1);

  it('listens for every note of the key on the neck, and for no other', () => {
    const top = 64 + fretsLeft(card.instrument);
    const key = [10, 0, 2, 3, 5, 7, 9];
    const all = Array.from({ length: 128 }, (_, midi) => midi).filter((midi) =>
      key.includes(midi % 12),
    );
    expect(pitchesOf(card)).toEqual(all.filter((midi) => midi >= 40 && midi <= top));
    expect(pitchesOf(card).at(-1)).toBeGreaterThan(80);
  });

  it.each([
    [63, 4],
    [51, 4],
    [75, 4],
    [67, 6],
    [58, 1],
    [64, null],
  ])('takes %s, in whatever octave, for degree %s', (midi, degree) => {
    expect(degreeOfPitch(card, midi)).toBe(degree);
    expect(pitchesOf(card).includes(midi)).toBe(degree !== null);
  });
});
