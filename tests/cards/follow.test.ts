import { describe, expect, it } from 'vitest';
import { follow } from '../../src/cards/follow/index.ts';
import { phraseDeck } from './phrases.ts';
import { itemIn, itemsIn } from './items.ts';

describe('follow', () => {
  const card = follow.ask(
    itemIn(follow, 'follow:Bb major:5:triad:guitar:ii 3/5 2/4 1/3 V on 3-2-1 1-5')!,
    1,
  );

  it('names one arpeggio and asks for the next', () => {
    expect(card.before.chord.symbol).toBe('Cm');
    expect(card.before.dots).toContainEqual({
      string: 2,
      fret: 4,
      note: 'Eb',
      degree: 4,
      member: 3,
    });
    expect(card.chord.symbol).toBe('F');
  });

  it('takes every complete set of right places', () => {
    for (const answer of ['1/1 1/5 2/1', '3/2 2/1 1/1', '3/5 3/2 1/1'])
      expect(follow.judge(card, answer).right, answer).toBe(true);
    expect(follow.judge(card, '1/1 1/5 2/2').right).toBe(false);
  });

  it('asks near where the phrase goes: its own places are among the right ones', () => {
    for (const item of itemsIn(follow, phraseDeck({ drills: [{ kind: 'follow' }] }))) {
      const asked = follow.ask(item, 1);
      expect(asked.before.chord.symbol).not.toBe(asked.chord.symbol);
      expect(asked.frets[1] - asked.frets[0]).toBeLessThanOrEqual(7);
    }
    const first = itemsIn(follow, phraseDeck({ drills: [{ kind: 'follow', phrases: [1] }] }))[0]!;
    expect(follow.judge(follow.ask(first, 1), '1/5 1/1 2/1').right).toBe(true);
  });

  it('asks for another size of the arpeggio before, but never for the same again', () => {
    const notes = [
      'C4 for 1/3 on 3/5',
      'Eb4 on 2/4',
      'G4 on 1/3',
      'Bb4 on 1/6',
      'G4 on 1/3',
      'Eb4 on 2/4',
      'C4 on 2/1',
    ];
    const asked = (...outline: string[]) =>
      itemsIn(
        follow,
        phraseDeck({ phrases: [{ tempo: 72, notes, outline }], drills: [{ kind: 'follow' }] }),
      ).map(({ chord }) => chord.symbol);
    expect(asked('1-3 ii', '4-7 ii7')).toEqual(['Cm7']);
    expect(asked('1-3 ii', '4-7 ii')).toEqual([]);
  });

  it('shows faint what is no note of its arpeggio, and the others by their number', () => {
    const { before } = follow.ask(
      itemIn(follow, 'follow:Bb major:5:triad:guitar:ii 3/5 2/3 2/4 1/3 V on 3-2-1 1-5')!,
      1,
    );
    expect(before.dots.map(({ note, member, look }) => [note, member, look])).toEqual([
      ['C', 1, undefined],
      ['D', undefined, 'faint'],
      ['Eb', 3, undefined],
      ['G', 5, undefined],
    ]);
    expect(before.line).toEqual([60, 62, 63, 67]);
  });

  // Seven frets on two strings and five on more, about the phrase's own, one more above than below where it is odd.
  it.each([
    [['F4 on 3/10', 'A4 on 2/10', 'C5 on 2/13'], '3-2 9-15'],
    [['F4 on 3/10', 'A4 on 2/10', 'C5 on 1/8'], '3-2-1 7-11'],
    [['F4 on 3/10', 'A4 on 2/10', 'F5 on 1/13'], '3-2-1 10-14'],
    [['A2 on 6/5', 'F3 on 4/3', 'C3 on 5/3'], '6-5-4 2-6'],
    [['F3 on 4/3', 'A3 on 4/7', 'C4 on 3/5'], '4-3 2-8'],
  ])('looks for the arpeggio of %o on strings and frets %s', (next, region) => {
    const notes = ['C4 for 1/3 on 3/5', 'Eb4 on 3/8', 'G4 on 2/8', ...next];
    const phrase = { tempo: 72, notes, outline: ['1-3 ii', '4-6 V'] };
    const [item] = itemsIn(follow, phraseDeck({ phrases: [phrase], drills: [{ kind: 'follow' }] }));
    expect(item!.id).toBe(`follow:Bb major:5:triad:guitar:ii 3/5 3/8 2/8 V on ${region}`);
  });
});
