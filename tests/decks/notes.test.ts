/** Notes as they are written by hand in a lesson: `drills/README.md` explains them. */
import { describe, expect, it } from 'vitest';
import { isTime, octaveOf, readNotes, writeNotes } from '../../src/decks/notes.ts';
import { beats } from '../../src/theory/rhythm.ts';
import { beatsText } from '../../src/theory/rhythmText.ts';

const read = (...texts: string[]) => readNotes(texts);
const noteOf = (...texts: string[]) => {
  const notes = read(...texts);
  if ('fault' in notes) throw new Error(notes.fault);
  return notes.at(-1)!;
};
const faultOf = (...texts: string[]) => {
  const notes = read(...texts);
  return 'fault' in notes ? notes.fault : null;
};

describe('a note', () => {
  // C4 is MIDI 60; a B sharp lies below the C it sounds as, a C flat above the B.
  it.each([
    ['C4', 60],
    ['Bb3', 58],
    ['B#3', 60],
    ['Cb4', 59],
    ['F##4', 67],
    ['C0', 12],
    ['C9', 120],
  ])('%s is MIDI %i', (text, midi) => {
    const note = noteOf(text);
    expect(note.midi).toBe(midi);
    expect(`${note.name}${octaveOf(note)}`).toBe(text);
  });

  it.each(['B-1', 'Cb0', 'C#9', 'D9', 'H4', 'C', '4'])('%s is none', (text) =>
    expect(faultOf(text)).toContain('begin with a note and its octave, C0 to C9'),
  );

  it('begins where the one before ends and lasts as long, unless it says otherwise', () => {
    const times = (...texts: string[]) => {
      const { at, length } = noteOf(...texts);
      return `${beatsText(at)} for ${beatsText(length)}`;
    };
    expect(times('C4')).toBe('0 for 1');
    expect(times('C4 for 1/3', 'D4')).toBe('1/3 for 1/3');
    expect(times('C4 for 1/3', 'D4 at 2')).toBe('2 for 1/3');
    expect(times('C4 at 1/2 for 2', 'D4 for 1/4')).toBe('5/2 for 1/4');
    expect(faultOf('C4 at 1', 'D4 at 1')).toContain('let it begin after the note before it');
    expect(faultOf('C4 for 2', 'D4 at 1')).toBeNull();
    expect(faultOf('C4', 'D4 for 0')).toMatch(/^note 2, “D4 for 0”: give beats as/);
  });

  it('says times no finer than a 960th, and up to 4096 beats', () => {
    expect([isTime(beats(1, 960)), isTime(beats(1, 961))]).toEqual([true, false]);
    expect([isTime(beats(4096)), isTime(beats(4097))]).toEqual([true, false]);
    expect([isTime(beats(0)), isTime(beats(-1))]).toEqual([true, false]);
    expect([isTime(beats(12_287, 3)), isTime(beats(12_289, 3))]).toEqual([true, false]);
  });

  it('has a place and a way it is reached, in this order', () => {
    expect(noteOf('C4', 'D4 at 1 for 1/2 on 3/7 by slide')).toMatchObject({
      place: { string: 3, fret: 7 },
      articulation: 'slide',
    });
    expect(faultOf('C4 on 3/30')).toContain('write the place as string and fret');
    expect(faultOf('C4 by magic')).toContain('write it like');
    expect(faultOf('C4 on 3/5 for 1')).toContain('write it like');
  });

  it('is written with no more words than it takes', () => {
    const texts = ['C4 at 1 for 1/3 on 3/5', 'D4', 'E4 at 3 by slide', 'F4 for 1', 'Bb3 on 3/3'];
    const notes = read(...texts);
    if ('fault' in notes) throw new Error(notes.fault);
    expect(writeNotes(notes)).toEqual(texts);
  });
});
