import { describe, expect, it } from 'vitest';
import { outline } from '../../src/cards/outline/index.ts';
import { judgeNamed } from '../../src/cards/arpeggio/named.ts';
import { itemIn } from './items.ts';

const ask = (id: string) => outline.ask(itemIn(outline, id)!, 1);

describe('outline', () => {
  it('shows an arpeggio where the phrase has it, without the tones that only embellish', () => {
    const card = ask('outline:Bb major:2:triad:guitar:ii 3/5 2/3 2/4 1/3 2/4');
    expect(card.shape.places).toEqual([
      { string: 3, fret: 5, member: 1, note: 'C' },
      { string: 2, fret: 4, member: 3, note: 'Eb' },
      { string: 1, fret: 3, member: 5, note: 'G' },
    ]);
    expect(card.rootShown).toBe(false);
    expect(judgeNamed(card, '2').right).toBe(true);
    expect(card.line).toHaveLength(5);
  });

  it('shows the root where another degree holds the same notes, and is none where that is not heard', () => {
    // E♭ G B♭ of Cm7 are the whole of E♭ too, but as a seventh they are also in E♭maj7: the root C tells.
    expect(ask('outline:Bb major:2:seventh:guitar:ii7 3/5 2/4 1/3').rootShown).toBe(true);
    expect(ask('outline:Bb major:2:seventh:guitar:ii7 3/5 2/4 1/3 1/6').rootShown).toBe(false);
    expect(itemIn(outline, 'outline:Bb major:2:seventh:guitar:ii7 2/4 1/3 1/6')).toBeNull();
    expect(itemIn(outline, 'outline:Bb major:2:triad:guitar:ii 3/5 2/4 3/5')).toBeNull();
  });

  it('in minor takes what harmonic minor lends for its degree', () => {
    const card = ask('outline:G minor:5:seventh:guitar:V7 4/0 4/4 3/2 3/5');
    expect(card.chord.symbol).toBe('D7');
    expect(outline.judge(card, '5').right).toBe(true);
    const why = outline.explain(card, outline.judge(card, '7'), '7', 'english');
    expect(why.title).toBe('V7, not VII7');
    expect(why.dots).toContainEqual({ string: 4, fret: 4, member: 3, note: 'F#', degree: 7 });
  });
});
