import { describe, expect, it, vi } from 'vitest';
import { newEntry, type Entry } from '../../src/making/entry.ts';
import { GUITAR } from '../../src/neck/instrument.ts';
import { beats } from '../../src/theory/rhythm.ts';

vi.stubGlobal('document', { documentElement: { dataset: {} } });
vi.stubGlobal('location', { hash: '' });
vi.stubGlobal('addEventListener', () => {});
const { digitTyped, keyed, lengthTyped, NOT_TYPING, stringMoved } =
  await import('../../src/app/teach/phrases/keys.ts');

const about = { key: { tonic: 'Bb', scale: 'major' }, instrument: GUITAR } as const;

/** Types digits, each so many ms after the one before. */
function typed(entry: Entry, keys: readonly (readonly [digit: string, after: number])[]): Entry {
  let [typing, now, at] = [{ ...NOT_TYPING, string: 2 } as typeof NOT_TYPING, entry, 0];
  for (const [digit, after] of keys) {
    const result = digitTyped(now, typing, digit, (at += after), about);
    typing = result.typing;
    now = result.edit?.(now) ?? now;
  }
  return now;
}
const frets = ({ sketch }: Entry) => sketch.notes.map(({ place }) => place!.fret);

describe('the keyboard on the phrase desk', () => {
  it('writes a note for each digit, and one on fret 12 for two that come at once', () => {
    const entry = newEntry(72);
    expect(
      frets(
        typed(entry, [
          ['3', 0],
          ['6', 900],
        ]),
      ),
    ).toEqual([3, 6]);
    expect(
      frets(
        typed(entry, [
          ['1', 0],
          ['2', 200],
          ['4', 200],
        ]),
      ),
    ).toEqual([12, 4]);
    expect(
      frets(
        typed(entry, [
          ['1', 0],
          ['2', 700],
        ]),
      ),
    ).toEqual([1, 2]);
    // No fret is called 05, and none has three digits.
    expect(
      frets(
        typed(entry, [
          ['0', 0],
          ['5', 100],
          ['1', 900],
          ['0', 599],
          ['1', 100],
          ['1', 600],
        ]),
      ),
    ).toEqual([0, 5, 10, 1, 1]);
    // The neck ends before fret 36.
    expect(
      frets(
        typed(entry, [
          ['3', 0],
          ['6', 100],
        ]),
      ),
    ).toEqual([3, 6]);
  });

  it('moves the note that the cursor is on', () => {
    const two = typed(newEntry(72), [
      ['3', 0],
      ['6', 900],
    ]);
    const back = keyed(two, { key: 'ArrowLeft', shiftKey: false });
    const on = { ...two, ...back };
    expect(on.cursor).toEqual({ on: 'note', at: 1 });
    expect(frets(typed(on, [['8', 0]]))).toEqual([3, 8]);
  });

  it('chooses strings within the instrument, and lengths by their letter', () => {
    const entry = newEntry(72);
    let typing = NOT_TYPING;
    for (let i = 0; i < 9; i++) typing = stringMoved(entry, typing, 1, about);
    expect(typing.string).toBe(6);
    for (let i = 0; i < 9; i++) typing = stringMoved(entry, typing, -1, about);
    expect(typing.string).toBe(1);
    expect(lengthTyped('Q', entry)).toEqual(beats(1));
    expect(lengthTyped('.', { length: beats(1) })).toEqual(beats(3, 2));
    expect(lengthTyped('.', entry)).toBeNull();
    expect(lengthTyped('x', entry)).toBeNull();
  });
});
