/** What decides a played answer, and how the kinds that are played and heard draw what they ask. */
import { describe, expect, it } from 'vitest';
import { echo } from '../../src/cards/echo/index.ts';
import { follow } from '../../src/cards/follow/index.ts';
import { orders } from '../../src/cards/order/orders.ts';
import { order } from '../../src/cards/order/index.ts';
import { play } from '../../src/cards/play/index.ts';
import { isDecided, wasPlayed } from '../../src/cards/playing/judge.ts';
import { lineDistance } from '../../src/cards/vary/distinguishable.ts';
import type { NoteVerdict } from '../../src/listening/listening.ts';
import type { Phrase } from '../../src/theory/phrase.ts';
import { beats } from '../../src/theory/rhythm.ts';
import { itemIn } from './items.ts';

type Verdict = NoteVerdict['verdict'];

describe('what was heard of a line', () => {
  const EXTRA = { time: 1, heard: 60, after: 0 };
  const heard = (...verdicts: (Verdict | null)[]) => ({
    notes: verdicts.map((verdict) => verdict && ({ verdict, time: 1, midi: 60 } as NoteVerdict)),
  });

  it.each([
    [['right', 'right'], true],
    [['right', 'wrong'], true],
    [['right', 'missing'], true],
    [['unheard', 'wrong'], true],
    [['unheard', 'missing'], true],
    [[null, 'wrong'], true],
    [['right', 'unheard'], false],
    [['right', null], false],
    [[null, null], false],
  ] as const)('%j is an answer: %s', (verdicts, decided) =>
    expect(isDecided(heard(...verdicts))).toBe(decided),
  );

  it('was played where a note was heard for sure, or anything beside them', () => {
    expect(wasPlayed({ ...heard(null, 'unheard'), extras: [] })).toBe(false);
    expect(wasPlayed({ ...heard(null, 'missing'), extras: [] })).toBe(true);
    expect(wasPlayed({ ...heard(null, 'right'), extras: [] })).toBe(true);
    expect(wasPlayed({ ...heard(null, null), extras: [EXTRA] })).toBe(true);
  });
});

describe('a line to be played back', () => {
  const ladder = (contour: string, rhythm = ':eighths') =>
    new Set(
      Array.from({ length: 30 }, (_, k) => {
        const id = `echo:Bb major:1:triad:guitar:${contour}:72${rhythm}`;
        const { notes } = echo.ask(itemIn(echo, id)!, 2 * k);
        // Steps of B♭ D F from the first note.
        const chromas = [10, 2, 5];
        const place = (midi: number) =>
          3 * Math.floor((midi - 10) / 12) + chromas.indexOf(midi % 12);
        return notes.map(({ midi }) => place(midi) - place(notes[0]!.midi)).join(' ');
      }),
    );

  it.each([
    ['up', ['0 1 2 3']],
    ['down', ['0 -1 -2 -3']],
    ['turn', ['0 -1 0 1', '0 1 0 -1']],
    ['skip', ['0 -2 -1 -3', '0 2 1 3']],
  ])('goes %s by the chord’s notes, four in eighths', (contour, walks) =>
    expect([...ladder(contour)].toSorted()).toEqual(walks.toSorted()),
  );

  it('is of three notes in triplets', () => {
    expect([...ladder('up', '')]).toEqual(['0 1 2']);
    expect([...ladder('down', '')]).toEqual(['0 -1 -2']);
  });

  it('ends on a whole beat, its other notes a half or a third', () => {
    const lengths = (rhythm: string) =>
      echo
        .ask(itemIn(echo, `echo:Bb major:1:triad:guitar:up:72${rhythm}`)!, 2)
        .notes.map(({ length }) => length);
    expect(lengths(':eighths')).toEqual([beats(1, 2), beats(1, 2), beats(1, 2), beats(1)]);
    expect(lengths('')).toEqual([beats(1, 3), beats(1, 3), beats(1)]);
  });

  it('is shown by degrees, whatever the notes are called', () => {
    const card = echo.ask(itemIn(echo, 'echo:Bb major:2:triad:guitar:72 ii 3/5 2/4 1/3')!, 2);
    for (const naming of ['english', 'movable'] as const) {
      const { dots } = echo.explain(card, echo.judge(card, '60 63 67'), '60 63 67', naming);
      expect(dots!.map(({ text }) => text)).toEqual(['2', '4', '6']);
    }
  });
});

it('a phrase to be followed shows what is no note of its arpeggio faint', () => {
  const item = itemIn(follow, 'follow:Bb major:5:triad:guitar:ii 3/5 3/3 2/4 1/3 V on 3-2-1 1-5')!;
  const dots = follow.ask(item, 1).before.dots;
  // C B♭ E♭ G: B♭ is not in Cm.
  expect(dots.map(({ note, look, member }) => [note, look, member])).toEqual([
    ['C', undefined, 1],
    ['Bb', 'faint', undefined],
    ['Eb', undefined, 3],
    ['G', undefined, 5],
  ]);
});

it('variations are apart by what their notes differ in the mean, and by how many more one has', () => {
  const phrase = (...midis: number[]): Phrase => ({
    tempo: 72,
    notes: midis.map((midi, i) => ({ midi, name: 'C', at: beats(i), length: beats(1) })),
  });
  expect(lineDistance(phrase(60, 62, 64), phrase(60, 62, 64))).toBe(0);
  expect(lineDistance(phrase(60, 62, 64), phrase(63, 62, 61))).toBe(2);
  expect(lineDistance(phrase(60, 62), phrase(60, 62, 64, 65))).toBe(2);
  expect(lineDistance(phrase(61, 63, 65, 66), phrase(60, 62))).toBe(3);
});

it('is played at a tempo from 30 to 240', () => {
  const read = (tempo: number) =>
    itemIn(play, `play:Bb major:2:triad:guitar:5-4:1-7:up:${tempo}`)?.tempo ?? null;
  expect([29, 30, 240, 241].map(read)).toEqual([null, 30, 240, null]);
});

describe('orders', () => {
  const groups = (id: string) => {
    const card = order.ask(itemIn(order, id)!, 1);
    return card.excerpt.groups;
  };

  it('are told once where one arpeggio comes twice, the order that is right first', () => {
    const some = groups(
      'order:Bb major:1:triad:guitar:72 I 5/1 4/0 4/3 IV 4/1 3/0 3/3 I 5/1 4/0 4/3 V 4/3 3/2 2/1',
    );
    const answers = orders(some).map(({ answer }) => answer);
    // 4!/2! of them.
    expect(answers).toHaveLength(12);
    expect(new Set(answers).size).toBe(12);
    expect(answers[0]).toBe('1 4 1 5');
    expect(orders(some)[0]!.groups.map(({ from }) => from)).toEqual([0, 3, 6, 9]);
  });
});
