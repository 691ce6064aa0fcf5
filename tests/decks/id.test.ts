import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { kindOf, openings, withDegree, writeId } from '../../src/decks/id.ts';
import { readId } from '../../src/decks/readId.ts';
import { KIND_NAMES } from '../../src/decks/kinds.ts';
import { INSTRUMENTS } from '../../src/neck/instrument.ts';
import { SIZES } from '../../src/theory/chord.ts';
import { parseKey } from '../../src/theory/key.ts';

const ID = 'spot:Bb major:2:triad:guitar:5-4:1-5';

describe('the id of an item', () => {
  it('reads back to what it was written from', () => {
    const heads = fc.record({
      kind: fc.constantFrom(...KIND_NAMES),
      key: fc.constantFrom('Bb major', 'G minor', 'F# harmonic minor', 'D dorian').map(parseKey),
      degree: fc.integer({ min: 1, max: 7 }),
      size: fc.constantFrom(...SIZES),
      instrument: fc.constantFrom(...INSTRUMENTS),
    });
    const rests = fc.array(fc.stringMatching(/^[^:]*$/), { maxLength: 4 });
    fc.assert(
      fc.property(heads, rests, (head, rest) => {
        const id = writeId({ ...head, key: head.key! }, rest);
        expect(readId(id)).toEqual({ head, rest });
        expect(kindOf(id)).toBe(head.kind);
      }),
    );
  });

  it('is none where any part of its head is none, or is written otherwise', () => {
    for (const bad of [
      '',
      'strange',
      ID.replace('spot', 'toString'),
      ID.replace('spot', '__proto__'),
      ID.replace('Bb', 'H'),
      ID.replace('major', 'blues'),
      ID.replace('major', 'constructor'),
      ID.replace(':2:', ':8:'),
      ID.replace(':2:', ':02:'),
      ID.replace('triad', 'dyad'),
      ID.replace('guitar', 'kazoo'),
    ]) {
      expect(readId(bad), bad).toBeNull();
    }
    fc.assert(fc.property(fc.string(), (text) => readId(text) === null));
  });

  it('names its kind, whatever it is', () => {
    expect([kindOf(ID), kindOf('strange')]).toEqual(['spot', 'strange']);
  });

  it('names the same on another degree, and what it shares with its siblings', () => {
    expect(withDegree(ID, 5)).toBe('spot:Bb major:5:triad:guitar:5-4:1-5');
    expect(openings(ID)).toEqual([
      'spot:*:2:triad:guitar:5-4:1-5',
      'spot:Bb major:2:*:guitar:5-4:1-5',
      'spot:Bb major:2:triad:*:5-4:1-5',
      'spot:Bb major:2:triad:guitar:*:1-5',
      'spot:Bb major:2:triad:guitar:5-4:*',
    ]);
  });
});
