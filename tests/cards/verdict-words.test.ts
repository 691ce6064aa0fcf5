/** What a student reads of a verdict, word for word: keys easy and hard, triads to thirteenths, modes, all ways to name notes. */
import { describe, expect, it } from 'vitest';
import { fill } from '../../src/cards/fill/index.ts';
import { order } from '../../src/cards/order/index.ts';
import { place } from '../../src/cards/place/index.ts';
import { play } from '../../src/cards/play/index.ts';
import { pulse } from '../../src/cards/pulse/index.ts';
import { spot } from '../../src/cards/spot/index.ts';
import { trace } from '../../src/cards/trace/index.ts';
import { degreeSteps } from '../../src/cards/arpeggio/degreeSteps.ts';
import { withBorrowed } from '../../src/cards/arpeggio/borrowedSteps.ts';
import { parseKey } from '../../src/theory/key.ts';
import type { Naming } from '../../src/theory/naming.ts';
import { itemIn } from './items.ts';
import { rows } from './rows.ts';

const ORDINALS = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh'];
const stands = (degree: number) => `stands on the ${ORDINALS[degree - 1]} degree.`;

describe('a shape that was named', () => {
  const said = (id: string, answer: string, naming: Naming = 'english') => {
    const card = spot.ask(itemIn(spot, `spot:${id}`)!, 2);
    return spot.explain(card, spot.judge(card, answer), answer, naming);
  };

  // Item; its chord and numeral; its notes; the degree answered instead; what is said of the two.
  it.each(
    rows(`
      Bb major:7:triad:guitar:3-2-1:5-9 | vii° | A° | A C E♭ | 5 | V | It shares A and C with V; E♭ tells them apart.
      Bb major:7:triad:guitar:3-2-1:5-9 | vii° | A° | A C E♭ | 1 | I | It shares no note with I.
      Bb major:7:seventh:guitar:4-3-2-1:5-9 | viiø7 | Aø7 | A C E♭ G | 2 | ii7 | It shares C, E♭ and G with ii7; A tells them apart.
      A harmonic minor:7:seventh:guitar:4-3-2-1:5-9 | vii°7 | G♯°7 | G♯ B D F | 2 | iiø7 | It shares B, D and F with iiø7; G♯ tells them apart.
      F# major:7:seventh:guitar:4-3-2-1:1-5 | viiø7 | E♯ø7 | E♯ G♯ B D♯ | 4 | IVmaj7 | It shares B and D♯ with IVmaj7; E♯ and G♯ tell them apart.
      Ab harmonic minor:3:triad:guitar:3-2-1:1-5 | III+ | C♭+ | C♭ E♭ G | 5 | V | It shares E♭ and G with V; C♭ tells them apart.
      D dorian:4:ninth:guitar+3:5-4-3-2:1-5 | IV9 | G9 | G B D F A | 6 | viø7♭9 | It shares B, D, F and A with viø7♭9; G tells them apart.
      E phrygian:2:eleventh:guitar:5-4-3-2:1-5 | IImaj9♯11 | Fmaj9♯11 | F A C E G B | 5 | vø11♭9 | It shares F, A, C, E and B with vø11♭9; G tells them apart.
      Eb lydian:4:thirteenth:guitar:6-5-4-3:1-5 | ivø11♭9♭13 | Aø11♭9♭13 | A C E♭ G B♭ D F | 1 | Imaj13♯11 | Imaj13♯11 has the same notes; only the root tells them apart.
      G minor:5:seventh:guitar:4-3-2-1:5-9 | v7 | Dm7 | D F A C | 7 | VII7 | It shares F, A and C with VII7; D tells them apart.
    `),
  )('%s is %s', (id, numeral, chord, notes, taken, other, apart) => {
    const degree = id.split(':')[1]!;
    expect(said(id, degree)).toMatchObject({
      name: `${numeral}, ${chord}`,
      title: `${numeral} it is`,
      sentence: `${chord} ${stands(Number(degree))}`,
      detail: `${notes}.`,
    });
    expect(said(id, taken)).toMatchObject({
      title: `${numeral}, not ${other}`,
      sentence: `${chord} ${stands(Number(degree))}`,
      detail: `${notes}. ${apart}`,
    });
  });

  it.each(
    rows(`
      english | E♯ø7 | E♯ G♯ B D♯. It shares B and D♯ with IVmaj7; E♯ and G♯ tell them apart.
      german | Eisø7 | Eis Gis H Dis. It shares H and Dis with IVmaj7; Eis and Gis tell them apart.
      solfege | Mi♯ø7 | Mi♯ Sol♯ Si Re♯. It shares Si and Re♯ with IVmaj7; Mi♯ and Sol♯ tell them apart.
      movable | viiø7 | ti re fa la. It shares fa and la with IVmaj7; ti and re tell them apart.
      degrees | viiø7 | 7 2 4 6. It shares 4 and 6 with IVmaj7; 7 and 2 tell them apart.
    `),
  )('is read in %s as %s', (naming, chord, detail) =>
    expect(said('F# major:7:seventh:guitar:4-3-2-1:1-5', '4', naming as Naming)).toMatchObject({
      title: 'viiø7, not IVmaj7',
      sentence: `${chord} ${stands(7)}`,
      detail,
    }),
  );

  it('has its numeral once where chords are named by it', () => {
    const id = 'F# major:7:seventh:guitar:4-3-2-1:1-5';
    expect(said(id, '7', 'movable').name).toBe('viiø7');
    expect(said(id, '7', 'german').name).toBe('viiø7, Eisø7');
  });

  // do is the tonic in minor and the modes too; what is lowered has its own syllable.
  it.each(
    rows(`
      Eb lydian:4:thirteenth:guitar:6-5-4-3:1-5 | fi la do mi sol ti re.
      E phrygian:2:eleventh:guitar:5-4-3-2:1-5 | ra fa le do me sol.
      G minor:5:seventh:guitar:4-3-2-1:5-9 | sol te re fa.
      A harmonic minor:3:triad:guitar:3-2-1:5-9 | me sol ti.
      C locrian:1:seventh:guitar:4-3-2-1:1-5 | do me se te.
      C lydian augmented:1:triad:guitar:3-2-1:1-5 | do mi si.
      C lydian #2:7:triad:guitar:3-2-1:1-5 | ti ri fi.
    `),
  )('%s is sung %s', (id, syllables) =>
    expect(said(id, id.split(':')[1]!, 'movable').detail).toBe(syllables),
  );

  it('has the degrees of minor beside those borrowed from harmonic minor', () => {
    const key = parseKey('G minor')!;
    const shown = { naming: 'english', chordNames: true } as const;
    const steps = degreeSteps(key, 'seventh', shown);
    const words = withBorrowed(steps, key, 'seventh', shown).map(
      ({ numeral, name }) => `${numeral} ${name}`,
    );
    expect(words).toEqual([
      'i Gm7',
      'iiø Aø7',
      'III B♭maj7',
      'iv Cm7',
      'v V Dm7 D7',
      'VI E♭maj7',
      'VII vii° F7 F♯°7',
    ]);
    expect(withBorrowed(steps, parseKey('G dorian')!, 'seventh', shown)).toEqual(steps);
  });
});

describe('a chord that was placed', () => {
  const said = (id: string, answer: string, naming: Naming = 'english') => {
    const card = place.ask(itemIn(place, `place:${id}`)!, 2);
    const { title, sentence, detail } = place.explain(
      card,
      place.judge(card, answer),
      answer,
      naming,
    );
    return [title, sentence, detail];
  };

  it.each(
    rows(`
      Bb major:7:seventh:guitar:4-3-2-1:5-9 | 4/7 3/8 2/8 1/8 | Aø7 it is | Aø7 has the notes A C E♭ G. | viiø7: it stands on the seventh degree.
      Bb major:7:seventh:guitar:4-3-2-1:5-9 | 4/7 3/7 2/8 1/8 | Not yet Aø7 | D is not in Aø7; E♭ is missing. | Aø7 has the notes A C E♭ G.
      G# harmonic minor:5:triad:guitar+2:5-4-3:1-7 | 5/4 4/3 3/1 | D♯ it is | D♯ has the notes D♯ F♯♯ A♯. | V: it stands on the fifth degree.
      G# harmonic minor:5:triad:guitar+2:5-4-3:1-7 | 5/6 4/5 3/3 | Not yet D♯ | E♯, A and B♯ are not in D♯; D♯, F♯♯ and A♯ are missing. | D♯ has the notes D♯ F♯♯ A♯.
      G# harmonic minor:5:triad:guitar+2:5-4-3:1-7 |  | Not yet D♯ | D♯, F♯♯ and A♯ are missing. | D♯ has the notes D♯ F♯♯ A♯.
    `),
  )('%s at %s', (id, answer, ...words) => expect(said(id, answer)).toEqual(words));

  it.each(
    rows(`
      german | Not yet Dis | Dis, Fisis and Ais are missing.
      movable | Not yet V | sol, ti and re are missing.
      degrees | Not yet V | 5, 7 and 2 are missing.
    `),
  )('in %s', (naming, title, sentence) => {
    const words = said('G# harmonic minor:5:triad:guitar+2:5-4-3:1-7', '', naming as Naming);
    expect(words.slice(0, 2)).toEqual([title, sentence]);
  });
});

describe('a path that was heard', () => {
  // Numerals with their chords, and the notes of the key.
  const KEYS = {
    'Bb major': ['I (B♭)|ii (Cm)|iii (Dm)|IV (E♭)|V (F)|vi (Gm)|vii° (A°)', 'B♭ C D E♭ F G A'],
    'F# major': [
      'I (F♯)|ii (G♯m)|iii (A♯m)|IV (B)|V (C♯)|vi (D♯m)|vii° (E♯°)',
      'F♯ G♯ A♯ B C♯ D♯ E♯',
    ],
    'D dorian': ['i (Dm)|ii (Em)|III (F)|IV (G)|v (Am)|vi° (B°)|VII (C)', 'D E F G A B C'],
    'C harmonic minor': [
      'i (Cm)|ii° (D°)|III+ (E♭+)|iv (Fm)|V (G)|VI (A♭)|vii° (B°)',
      'C D E♭ F G A♭ B',
    ],
  } as const;

  it.each(Object.entries(KEYS))(
    'in %s says what it walks, and where the answer left it',
    (key, [chords, notes]) => {
      let embellished = 0;
      for (const degree of [2, 7])
        for (const seed of [4, 7, 9, 11]) {
          const card = trace.ask(
            itemIn(trace, `trace:${key}:${degree}:triad:guitar:turn:72`)!,
            seed,
          );
          const walked = card.line.degrees.map((one) => chords.split('|')[one - 1]).join(', then ');
          const { embellishment } = card.line;
          if (embellishment) embellished++;
          const tone = embellishment
            ? `, with a ${embellishment.kind} tone at note ${embellishment.index + 1}`
            : '';
          for (const { path } of card.choices) {
            const why = trace.explain(card, trace.judge(card, path), path, 'english');
            expect(why.title).toBe(card.path);
            expect(why.sentence).toBe(`It walks ${walked}${tone}.`);
            const [right, other] = [card.path.split(' '), path.split(' ')];
            const at = right.findIndex((one, i) => one !== other[i]);
            const label = notes.split(' ')[Number(right[at]) - 1];
            expect(why.detail).toBe(
              at < 0
                ? ''
                : `They part at note ${at + 1}: it is ${right[at]} (${label}), not ${other[at]}.`,
            );
          }
        }
      expect(embellished).toBeGreaterThan(0);
    },
  );

  it('names a chord once where chords are named by their numerals', () => {
    const card = trace.ask(itemIn(trace, 'trace:F# major:7:triad:guitar:up:96')!, 3);
    const numerals = card.line.degrees.map((one) => 'I ii iii IV V vi vii°'.split(' ')[one - 1]);
    for (const naming of ['movable', 'degrees'] as const)
      expect(trace.explain(card, trace.judge(card, card.path), card.path, naming).sentence).toMatch(
        new RegExp(`^It walks ${numerals.join(', then ')}[,.]`),
      );
  });

  it('tells of an embellishing tone where it stands: no note of the arpeggio', () => {
    for (let seed = 1; seed < 30; seed += 2) {
      const card = trace.ask(itemIn(trace, 'trace:Bb major:2:triad:guitar:up:72')!, seed);
      const why = trace.explain(card, trace.judge(card, card.path), card.path, 'english');
      const at = /tone at note (\d+)\.$/.exec(why.sentence)?.[1];
      if (at === undefined) continue;
      const [before, tone, after] = [-2, -1, 0].map(
        (by) => card.phrase.notes[Number(at) + by]!.midi,
      );
      expect(Math.abs(tone! - before!), `seed ${seed}`).toBeLessThanOrEqual(2);
      expect(Math.abs(after! - tone!)).toBeLessThanOrEqual(2);
    }
  });
});

describe('what else is heard', () => {
  const stairs = itemIn(
    order,
    'order:Bb major:2:triad:guitar:72 ii 3/5 2/4 1/3 V 1/5 1/1 2/1 I 2/3 3/3 4/3 vi 4/5 3/3 2/3',
  )!;
  it.each(
    rows(`
      2 1 5 6 | They part at the second arpeggio: it is V, not I.
      2 5 6 1 | They part at the third arpeggio: it is I, not vi.
      2 6 1 5 | They part at the second arpeggio: it is V, not vi.
      2 5 1 6 | 
    `),
  )('an order taken for %s', (answer, detail) => {
    const card = Array.from({ length: 40 }, (_, seed) => order.ask(stairs, seed)).find(
      ({ choices }) => choices.some((one) => one.answer === answer),
    )!;
    const why = order.explain(card, order.judge(card, answer), answer, 'english');
    expect(why).toMatchObject({
      title: 'ii V I vi',
      sentence: 'It goes ii (Cm), then V (F), then I (B♭), then vi (Gm).',
      detail,
    });
  });

  it.each(
    rows(`
      fill:Bb major:4:triad:guitar:72 ii 3/5 2/4? 1/3 | 4 | 4 it is | The fourth degree is missing, E♭. | It is the third of ii (Cm).
      fill:Bb major:4:triad:guitar:72 ii 3/5 2/4? 1/3 | 6 | 4, not 6 | The fourth degree is missing, E♭. | It is the third of ii (Cm).
      fill:Bb major:6:triad:guitar:72 ii 3/5 2/4 1/3? 2/4 | 4 | 6, not 4 | The sixth degree is missing, G. | It is the fifth of ii (Cm).
    `),
  )('%s, answered %s', (id, answer, title, sentence, detail) => {
    const card = fill.ask(itemIn(fill, id)!, 1);
    const why = fill.explain(card, fill.judge(card, answer), answer, 'english');
    expect(why).toMatchObject({ name: id.split(':')[2], title, sentence, detail });
  });

  // Eighths at 60 are half a second each: taps late, in time, early.
  const taps = (at: (n: number) => number) =>
    Array.from({ length: 48 }, (_, n) => Math.round(10 * at(n)) / 10).join(' ');
  it.each([
    [
      'every second eighth 60 ms late',
      (n: number) => 500 * n + 60 * (n % 2),
      /Your second note comes \d+ ms late\./,
    ],
    [
      'every second eighth 60 ms early',
      (n: number) => 500 * n - 60 * (n % 2),
      /Your second note comes \d+ ms early\./,
    ],
    ['a steady 3 % too slow', (n: number) => 515 * n, /you fell behind the click by 3\.0 %/],
    ['a steady 3 % too fast', (n: number) => 485 * n, /you ran ahead of the click by 3\.0 %/],
    [
      'one tap 200 ms late',
      (n: number) => 500 * n + (n === 5 ? 200 : 0),
      /The second note of beat 3 in bar 1 came \d+ ms late\./,
    ],
    [
      'one tap 200 ms early',
      (n: number) => 500 * n - (n === 10 ? 200 : 0),
      /The first note of beat 2 in bar 2 came \d+ ms early\./,
    ],
  ])('taps with %s', (_, at, words) => {
    const card = pulse.ask(itemIn(pulse, 'pulse:Bb major:1:triad:guitar:eighths:60:beat')!, 2);
    const answer = taps(at);
    const why = pulse.explain(card, pulse.judge(card, answer), answer, 'english');
    expect(`${why.sentence} ${why.detail}`).toMatch(words);
  });

  // A tempo 7 % off is not told, one 10 % off is.
  it.each(
    rows(`
      48@0 51@0.465 55@0.93 51@1.395 48@1.86 | 
      48@0 51@0.45 55@0.9 51@1.35 48@1.8 | You played at about 67, asked was 60.
      48@0 51@0.56 55@1.12 51@1.68 48@2.24 | You played at about 54, asked was 60.
    `),
  )('a line played %s', (answer, tempo) => {
    const card = play.ask(itemIn(play, 'play:Bb major:2:triad:guitar:5-4:1-7:turn:60')!, 2);
    const { detail } = play.explain(card, play.judge(card, answer), answer, 'english');
    expect(/You played.*$/.exec(detail)?.[0] ?? '').toBe(tempo);
  });
});
