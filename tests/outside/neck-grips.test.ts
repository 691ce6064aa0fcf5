import data from '@tombatossals/chords-db/lib/guitar.json' with { type: 'json' };
import { describe, expect, test } from 'vitest';
import { fretDistance } from '../../src/neck/fret.ts';
import { grips, type ChordNotes } from '../../src/neck/grip.ts';
import { GUITAR } from '../../src/neck/instrument.ts';
import { midiAt, placesOf, type Place } from '../../src/neck/place.ts';
import { placeText } from '../../src/neck/placeText.ts';
import { chordOn, SIZES } from '../../src/theory/chord.ts';
import { chroma } from '../../src/theory/note.ts';
import { hasSevenNotes, SCALE_KINDS } from '../../src/theory/scale.ts';

/**
 * The open chord data set @tombatossals/chords-db 0.5.1 (MIT): 529 guitar chords, 2,069 grips. Its suffixes, as our
 * symbols; left out are those that no stack of thirds in our scales makes (sus, 6, add, slash chords, …).
 */
const SUFFIXES: Readonly<Record<string, string>> = {
  major: '',
  minor: 'm',
  dim: 'dim',
  aug: 'aug',
  maj7: 'maj7',
  m7: 'm7',
  '7': '7',
  m7b5: 'm7b5',
  dim7: 'dim7',
  mmaj7: 'mMaj7',
  'maj7#5': 'maj7#5',
  '9': '9',
  maj9: 'maj9',
  m9: 'm9',
  '7b9': '7b9',
  mmaj9: 'mMaj9',
  '11': '11',
  maj11: 'maj11',
  m11: 'm11',
  mmaj11: 'mMaj11',
  '9#11': '9#11',
  '13': '13',
  maj13: 'maj13',
};

/** A chord of each type we know on each root: `C#m7` and `Dbm7` alike, by what sounds. */
function knownChords(): Map<string, ChordNotes> {
  const found = new Map<string, ChordNotes>();
  for (const scale of SCALE_KINDS.filter(hasSevenNotes))
    for (const tonic of ['C', 'C#', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B'])
      for (const size of SIZES)
        for (let degree = 1; degree <= 7; degree++) {
          const chord = chordOn({ tonic, scale }, degree, size);
          const suffix = chord.symbol.slice(chord.root.length);
          found.set(`${chroma(chord.root)} ${suffix}`, chord);
        }
  return found;
}

interface Listed {
  readonly name: string;
  readonly notes: ChordNotes;
  readonly places: readonly Place[];
  /** The printed fingers of the fretted places. */
  readonly fingers: readonly number[];
}

const CHORDS = knownChords();

const listed: Listed[] = Object.values(data.chords)
  .flat()
  .flatMap(({ key, suffix, positions }) => {
    const ours = SUFFIXES[suffix];
    const notes = ours === undefined ? undefined : CHORDS.get(`${chroma(key)} ${ours}`);
    if (!notes) return [];
    return positions.map(({ frets, fingers, baseFret }) => {
      const strings = frets.map((fret, i) => ({
        string: 6 - i,
        fret: fret > 0 ? fret + baseFret - 1 : fret,
        finger: fingers[i]!,
      }));
      const places = strings.filter(({ fret }) => fret >= 0);
      return {
        name: `${key} ${suffix} ${strings.map(({ fret }) => (fret < 0 ? 'x' : fret)).join(' ')}`,
        notes,
        places: places.map(({ string, fret }) => ({ string, fret })),
        fingers: places.filter(({ fret }) => fret > 0).map(({ finger }) => finger),
      };
    });
  });

/** Whether a grip sounds notes of its chord only; the others are faults of the data. */
const clean = listed.filter(({ notes, places }) => {
  const sounding = notes.notes.map(chroma);
  return places.every((place) => sounding.includes(midiAt(GUITAR, place) % 12));
});

const text = (places: readonly Place[]) => places.map(placeText).join(' ');

function findIn({ notes, places }: Listed) {
  const frets = places.map(({ fret }) => fret).filter((fret) => fret > 0);
  return grips(GUITAR, notes, {
    strings: places.map(({ string }) => string),
    frets: [Math.min(...frets), Math.max(...frets)],
    open: places.some(({ fret }) => fret === 0),
  }).find((grip) => text(grip.places) === text(places));
}

describe('the grips of the open chord data set', () => {
  const found = clean.map((one) => ({ one, grip: findIn(one) }));
  const missed = found.filter(({ grip }) => !grip).map(({ one }) => one.name);
  const same = found.filter(
    ({ one, grip }) =>
      grip &&
      grip.places
        .filter(({ fret }) => fret > 0)
        .map(({ finger }) => finger)
        .join() === one.fingers.join(),
  );

  test('are found by our search, all but one that no hand holds', () => {
    console.info(
      `grips: ${listed.length} judged, ${listed.length - clean.length} with foreign notes, ${clean.length - missed.length} of ${clean.length} found, missed: ${missed.join('; ') || 'none'}`,
    );
    expect(clean.length).toBeGreaterThan(1000);
    // Its index lies across the strings at fret 8 while its second finger stops one of them at fret 7, behind it.
    expect(missed).toEqual(['C 9 8 10 8 7 8 10']);
  });

  test('are mostly fingered as printed there', () => {
    console.info(
      `grips: all fingers as printed in ${same.length} of ${clean.length - missed.length}`,
    );
    expect(same.length / clean.length).toBeGreaterThan(0.7);
  });
});

// Measured on the same data: no listed grip spans more than three fret steps or 97.3 mm.
test('no grip of ours spans more than a hand does', () => {
  for (const symbol of ['0 ', '0 m7', '5 7', '9 m7b5']) {
    const all = grips(GUITAR, CHORDS.get(symbol)!, { strings: [5, 4, 3, 2], frets: [1, 15] });
    const spans = all.map(({ places }) => {
      const frets = places.map(({ fret }) => fret);
      const [lo, hi] = [Math.min(...frets), Math.max(...frets)];
      return { steps: hi - lo, mm: fretDistance(648, hi) - fretDistance(648, lo) };
    });
    expect(all.length).toBeGreaterThan(0);
    expect(Math.max(...spans.map(({ steps }) => steps))).toBeLessThanOrEqual(3);
    expect(Math.max(...spans.map(({ mm }) => mm))).toBeLessThanOrEqual(100);
  }
});

test('each chord note on a string is offered: the places are those of an independent count', () => {
  const C = chroma('C');
  const counted = [6, 5, 4, 3, 2, 1].flatMap((string) =>
    Array.from({ length: 23 }, (_, fret) => ({ string, fret })).filter(
      ({ fret }) => ([64, 59, 55, 50, 45, 40][string - 1]! + fret) % 12 === C,
    ),
  );
  expect(placesOf(GUITAR, C, [6, 5, 4, 3, 2, 1], [0, 22])).toEqual(counted);
});
