import { isDeepStrictEqual } from 'node:util';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readView, writeView } from '../../src/app/neck/address.ts';
import { viewDots, viewRun, upAndDown } from '../../src/app/neck/dots.ts';
import {
  viewInKey,
  viewOnInstrument,
  plainView,
  positions,
  SHOWN,
  steppedTo,
  stringSets,
  type OneShape,
  type View,
  type Where,
} from '../../src/app/neck/view.ts';
import {
  bends,
  movedAcross,
  movedAlong,
  nextShape,
  onStrings,
  settled,
  shapeOf,
  shapeSets,
} from '../../src/app/neck/shape.ts';
import { sheetWords, shapeSentences, stepWords, viewTitle } from '../../src/app/neck/viewWords.ts';
import { fretsLeft, GUITAR, INSTRUMENTS } from '../../src/neck/instrument.ts';
import { instrumentFromId } from '../../src/neck/instrumentFault.ts';
import { midiAt } from '../../src/neck/place.ts';
import { parsePlace } from '../../src/neck/placeText.ts';
import { chordOn, SIZES } from '../../src/theory/chord.ts';
import { chroma } from '../../src/theory/note.ts';
import { hasSevenNotes, SCALE_KINDS, scaleNotes } from '../../src/theory/scale.ts';

const B_FLAT = plainView({ tonic: 'Bb', scale: 'major' });
const TONICS = [...'CDEFGAB'].flatMap((letter) =>
  ['bb', 'b', '', '#', '##'].map((signs) => letter + signs),
);
const OWN = instrumentFromId('C#2.G#2.C#3.F#3.A#3')!;

const anyView: fc.Arbitrary<View> = fc
  .record({
    tonic: fc.constantFrom(...TONICS),
    scale: fc.constantFrom(...SCALE_KINDS),
    size: fc.constantFrom(...SIZES),
    degrees: fc.tuple(fc.integer({ min: 1, max: 7 }), fc.integer({ min: 0, max: 7 })),
    whole: fc.boolean(),
    shown: fc.constantFrom(...SHOWN),
    listed: fc.constantFrom(...INSTRUMENTS, OWN),
    frets: fc.integer({ min: 12, max: 27 }),
    capo: fc.integer({ min: 0, max: 7 }),
    leftHanded: fc.boolean(),
    part: fc.nat(),
    oneShape: fc.boolean(),
  })
  .map((some) => {
    const { tonic, scale, size, shown, frets, capo, leftHanded } = some;
    const instrument = { ...some.listed, frets, capo, leftHanded };
    const parts: Where[] = [
      null,
      ...positions(instrument).map((span) => ({ frets: span })),
      ...stringSets(instrument).map((strings) => ({ strings })),
    ];
    const [degree, from] = some.degrees;
    const none = some.whole || !hasSevenNotes(scale);
    const view: View = {
      key: { tonic, scale },
      size,
      degree: none ? null : degree,
      from: none || from === 0 || from === degree ? null : from,
      shown,
      where: parts[some.part % parts.length]!,
      instrument,
    };
    const sets = stringSets(instrument);
    const shaped = some.oneShape && view.degree !== null && SIZES.indexOf(size) < 3;
    return settled(shaped ? onStrings(view, sets[some.part % sets.length]!, some.part % 12) : view);
  });

describe('the address of a neck', () => {
  it('can be read by eye', () => {
    expect(writeView(B_FLAT)).toBe('Bb-major');
    const view = {
      ...viewInKey(B_FLAT, { tonic: 'F#', scale: 'locrian #6' }),
      size: 'seventh' as const,
      degree: 4,
      from: 2,
      shown: 'degrees' as const,
      where: { strings: [5, 4] },
      instrument: { ...instrumentFromId('drop-D+2')!, frets: 24, leftHanded: true },
    };
    expect(writeView(view)).toBe(
      'Fsharp-locrian-sharp6/seventh-2-to-4/degrees/strings-5-4/drop-D+2/24-frets/left-handed',
    );
    expect(writeView({ ...B_FLAT, instrument: OWN })).toBe(
      'Bb-major/Csharp2.Gsharp2.Csharp3.Fsharp3.Asharp3',
    );
  });

  it('reads back as the view that was written, whatever that is, and holds no second #', () => {
    fc.assert(
      fc.property(anyView, (view) => {
        const address = writeView(view);
        expect(address).not.toContain('#');
        expect(readView(address)).toEqual(view);
        expect(readView(encodeURIComponent(address))).toEqual(view);
      }),
    );
  });

  it('says what is wrong where it is damaged', () => {
    const fault = (address: string) => (readView(address) as { fault?: string }).fault;
    expect(fault('H-major')).toContain('“H-major” is no key');
    expect(fault('Bb-major/triad-8')).toContain('“triad-8”');
    expect(fault('Bb-major/triad-2-to-2')).toContain('arpeggio');
    expect(fault('A-blues/triad-2')).toContain('arpeggio');
    expect(fault('Bb-major/frets-9-5')).toContain('not on the instrument');
    expect(fault('Bb-major/frets-5-9/ukulele+11')).toContain('not on the instrument');
    expect(fault('Bb-major/strings-6-5/bass')).toContain('not on the instrument');
    expect(fault('Bb-major/strings-4-5')).toContain('not on the instrument');
    expect(fault('Bb-major/28-frets')).toContain('not 28');
    expect(fault('Bb-major/E2.A2.D3.G9')).toContain('String 1');
    expect(fault('Bb-major/triad-2/shape-5.3-5.6-4.4')).toContain('none of the arpeggio');
    expect(fault('Bb-major/shape-5.3-5.6-4.5')).toContain('none of the arpeggio');
    expect(fault('Bb-major/triad-2/shape-5.3-5.6-4.99')).toContain('not on the instrument');
    expect(fault('Bb-major/triad-2/shape-5.3-5.6-4.5-from-4')).toBeUndefined();
    expect(fault('Bb-major/triad-2/shape-6.3-6.8-5.6-from-7')).toContain('This link');
    expect(fault('Bb-major/triad-2/shape-5.3-5.6-4.5-from-3')).toContain('“shape-5.3');
    expect(fault('Bb-major/triad-2/fingers')).toContain('one shape only');
    expect(fault('Bb-major/%')).toContain('damaged');
    expect(fault(`Bb-major/${'names/'.repeat(100)}`)).toContain('damaged');
  });

  it('reads any text at all as a view or a fault', () => {
    const words = fc.constantFrom(
      'Bb-major',
      'triad-',
      'frets-',
      'strings-',
      '9',
      '-to-',
      '/',
      '+',
      '%',
    );
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.array(words).map((some) => some.join('')),
        ),
        (text) => {
          const read = readView(text);
          const sound =
            'fault' in read
              ? /^This link .*\.$/s.test(read.fault)
              : isDeepStrictEqual(readView(writeView(read)), read);
          expect(sound).toBe(true);
        },
      ),
    );
  });
});

describe('what is looked at', () => {
  it('steps from arpeggio to arpeggio, and from one back to the whole key', () => {
    const ii = steppedTo(B_FLAT, 2);
    expect(ii).toMatchObject({ degree: 2, from: null });
    expect(steppedTo(ii, 4)).toMatchObject({ degree: 4, from: 2 });
    expect(steppedTo(steppedTo(ii, 4), 4)).toMatchObject({ degree: null, from: null });
  });

  it('loses its arpeggio on a scale that has none, and its strings on an instrument without them', () => {
    const view = { ...steppedTo(B_FLAT, 2), where: { strings: [6, 5] } };
    expect(viewInKey(view, { tonic: 'A', scale: 'blues' }).degree).toBeNull();
    expect(viewInKey(view, { tonic: 'A', scale: 'dorian' }).degree).toBe(2);
    // What was stepped from was of the key that was.
    expect(viewInKey(steppedTo(view, 4), { tonic: 'A', scale: 'dorian' })).toMatchObject({
      degree: 4,
      from: null,
    });
    expect(viewOnInstrument(view, instrumentFromId('bass')!).where).toBeNull();
    expect(viewOnInstrument(view, instrumentFromId('drop-D')!).where).toEqual({ strings: [6, 5] });
  });

  it('has positions to the last fret and string sets of two to four neighbours', () => {
    expect(positions(GUITAR).at(0)).toEqual([0, 4]);
    expect(positions(GUITAR).at(-1)).toEqual([18, 22]);
    expect(positions({ ...GUITAR, capo: 3 }).at(-1)).toEqual([15, 19]);
    expect(stringSets(GUITAR).map((set) => set.join('-'))).toEqual(
      '6-5 5-4 4-3 3-2 2-1 6-5-4 5-4-3 4-3-2 3-2-1 6-5-4-3 5-4-3-2 4-3-2-1'.split(' '),
    );
  });
});

describe('dots', () => {
  const at = (view: View, string: number, fret: number) =>
    viewDots(view, 'english').find((dot) => dot.string === string && dot.fret === fret);

  it('are every place of the key and no other, whatever the key, instrument and part', () => {
    fc.assert(
      fc.property(anyView, (any) => {
        const view: View = { ...any, degree: null, from: null };
        const wanted = scaleNotes(view.key).map(chroma);
        const dots = viewDots(view, 'english');
        const { instrument, where } = view;
        let count = 0;
        for (let string = 1; string <= instrument.tuning.length; string++) {
          if (where && 'strings' in where && !where.strings.includes(string)) continue;
          const [low, high] = where && 'frets' in where ? where.frets : [0, fretsLeft(instrument)];
          for (let fret = low; fret <= high; fret++)
            if (wanted.includes(midiAt(instrument, { string, fret }) % 12)) count++;
        }
        expect(dots.length).toBe(count);
        expect(dots.every((dot) => wanted.includes(midiAt(instrument, dot) % 12))).toBe(true);
      }),
      { numRuns: 50 },
    );
  });

  it('stay, go and come from ii to IV', () => {
    const view = steppedTo(steppedTo(B_FLAT, 2), 4);
    expect(at(view, 4, 1)).toMatchObject({ text: 'E♭', member: 1 });
    expect(at(view, 4, 1)).not.toHaveProperty('look');
    expect(at(view, 5, 3)).toMatchObject({ note: 'C', text: '', look: 'goes' });
    expect(at(view, 5, 1)).toMatchObject({ text: 'B♭', member: 5, look: 'comes' });
  });

  it('show names, degrees, intervals or nothing', () => {
    const ii9 = { ...B_FLAT, size: 'ninth' as const, degree: 2 };
    const text = (shown: View['shown']) => at({ ...ii9, shown }, 4, 1)?.text;
    expect([text('names'), text('degrees'), text('intervals')]).toEqual(['E♭', '4', 'm3']);
    expect(at({ ...ii9, shown: 'intervals' }, 4, 0)?.text).toBe('M9');
    expect(at({ ...B_FLAT, shown: 'intervals' }, 4, 1)?.text).toBe('P4');
    const bare = viewDots({ ...ii9, shown: 'nothing' }, 'english');
    expect(bare.some((dot) => dot.note || dot.degree || dot.text)).toBe(false);
    expect(new Set(bare.map(({ member }) => member))).toEqual(new Set([1, undefined]));
  });

  // A C E♭ on the strings G and B: a hand reaches from E♭ on 3/8 to C on 2/13, five frets on.
  it('has every shape of an arpeggio on its strings that a hand reaches, one after the other', () => {
    const shapes: string[] = [];
    for (
      let view: View | null = onStrings({ ...B_FLAT, degree: 7 }, [3, 2]);
      view && shapes.length < 12;
      view = nextShape(view, 1)
    ) {
      const { shape } = view.where as OneShape;
      shapes.push(shape.map(({ string, fret }) => `${string}/${fret}`).join(' '));
    }
    expect(shapes).toEqual([
      '3/2 2/1 2/4',
      '3/5 3/8 2/10',
      '3/8 2/10 2/13',
      '3/14 2/13 2/16',
      '3/17 3/20 2/22',
    ]);
  });

  it('goes up and back over its top note once, where its notes have places', () => {
    const sounds = (view: View) => upAndDown(view).map(({ midi }) => midi);
    const triad = { ...B_FLAT, degree: 2, where: { frets: [1, 5] as const } };
    expect(sounds(triad)).toEqual([48, 51, 55, 51, 48]);
    expect(sounds({ ...B_FLAT, where: { strings: [1] } })).toEqual([
      70, 72, 74, 75, 77, 79, 81, 82, 81, 79, 77, 75, 74, 72, 70,
    ]);
  });

  it('are heard upwards from the lowest root, each note on a dot that sounds it', () => {
    fc.assert(
      fc.property(anyView, (view) => {
        const run = viewRun(view);
        const midis = run.map(({ midi }) => midi);
        expect(midis).toEqual([...new Set(midis)].toSorted((a, b) => a - b));
        expect(
          run.every(({ midi, place }) => !place || midiAt(view.instrument, place) === midi),
        ).toBe(true);
      }),
    );
    const run = viewRun({ ...B_FLAT, degree: 2, where: { frets: [1, 5] } });
    expect(run).toEqual([
      { midi: 48, place: { string: 5, fret: 3 } },
      { midi: 51, place: { string: 4, fret: 1 } },
      { midi: 55, place: { string: 4, fret: 5 } },
    ]);
  });
});

describe('one shape', () => {
  const ii = steppedTo(B_FLAT, 2);
  const text = (view: View | null) =>
    view &&
    shapeOf(view)
      ?.places.map(({ string, fret }) => `${string}/${fret}`)
      .join(' ');
  const on543 = onStrings(ii, [5, 4, 3], 6);

  function at(places: string) {
    return places.split(' ').map((place) => parsePlace(place)!);
  }

  it('is the likeliest for a hand that begins there, on all of the strings, none open', () => {
    const { places } = shapeOf(on543)!;
    expect(places[0]).toMatchObject({ string: 5, fret: 6, member: 3 });
    expect(new Set(places.map(({ string }) => string))).toEqual(new Set([5, 4, 3]));
  });

  it('is in root position where strings alone are chosen', () => {
    for (const strings of shapeSets(ii)) {
      const chosen = shapeOf(onStrings(ii, strings))!;
      expect(chosen.inversion, strings.join('-')).toBe(0);
    }
  });

  it('steps to other shapes of the same arpeggio on the same strings', () => {
    const next = nextShape(on543, 1)!;
    expect(next.degree).toBe(2);
    expect(shapeOf(next)!.inversion).toBe(2);
    expect(nextShape(next, -1)).toEqual(on543);
  });

  it('keeps its form along the neck, where it is an arpeggio of the key again', () => {
    const iii = movedAlong(on543, 1)!;
    expect(iii.degree).toBe(3);
    expect(movedAlong(iii, -1)).toEqual(on543);
  });

  it('bends across strings 3 and 2, and says why', () => {
    const view = onStrings(ii, [4, 3], 8);
    const moved = movedAcross(view, 1)!;
    expect(moved.degree).toBe(2);
    expect(bends(moved)!.bent.every(({ string }) => string === 2)).toBe(true);
    expect(shapeSentences(moved, 'english').at(-1)).toContain(
      'Strings 3 and 2 are tuned a major third apart',
    );
    const looks = viewDots(moved, 'english').map(({ look }) => look);
    expect(looks).toContain('bent');
    expect(looks).toContain('unbent');
  });

  it('stays an arpeggio of the key wherever it is moved, and comes back', () => {
    fc.assert(
      fc.property(anyView, fc.constantFrom<1 | -1>(1, -1), (view, by) => {
        fc.pre(shapeOf(view) !== null);
        const back = by === 1 ? -1 : 1;
        const along = movedAlong(view, by);
        if (along) expect(text(movedAlong(along, back))).toBe(text(view));
        const across = movedAcross(view, by);
        for (const moved of [along, across]) {
          if (!moved) continue;
          expect(shapeOf(moved)!.inversion).toBe(shapeOf(view)!.inversion);
          expect(readView(writeView(moved))).toEqual(moved);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('has a finger on every dot, and tells a barre in words', () => {
    const grip: View = {
      ...steppedTo(B_FLAT, 5),
      shown: 'fingers',
      where: { shape: at('4/10 3/10 2/10'), across: 0 },
    };
    expect(shapeOf(grip)!.inversion).toBe(2);
    expect(viewDots(grip, 'english').map((dot) => dot.text)).toEqual(['1', '1', '1']);
    expect(shapeSentences(grip, 'english')).toEqual([
      'F/C, second inversion.',
      'Barre: the index finger lies across strings 4–2.',
    ]);
    const line = viewDots({ ...on543, shown: 'fingers' }, 'english');
    expect(line.every((dot) => /^[1-4]$/.test(dot.text!) && dot.note)).toBe(true);
  });

  it('gives way to the nearest one of another arpeggio, and to its strings in the whole key', () => {
    const IV = settled(steppedTo(on543, 4));
    expect(shapeOf(IV)).not.toBeNull();
    const whole = settled({ ...steppedTo(on543, 2), shown: 'fingers' });
    expect(whole).toMatchObject({ where: { strings: [5, 4, 3] }, shown: 'names' });
  });
});

describe('words', () => {
  const step = (from: number, to: number, naming: 'english' | 'german' = 'english') => {
    const { key } = B_FLAT;
    const words = stepWords(chordOn(key, from, 'triad'), chordOn(key, to, 'triad'), naming);
    return `${words.from}: ${words.parts.map((part) => part.words).join(', ')}`;
  };

  it('say which notes stay, go and come', () => {
    expect(step(2, 4)).toBe('ii to IV: E♭ and G stay, C goes, B♭ comes');
    expect(step(1, 2)).toBe('I to ii: B♭, D and F go, C, E♭ and G come');
    expect(step(2, 4, 'german')).toBe('ii to IV: Es and G stay, C goes, B comes');
    const { key } = B_FLAT;
    const whole = stepWords(
      chordOn(key, 1, 'thirteenth'),
      chordOn(key, 2, 'thirteenth'),
      'english',
    );
    expect(whole.parts).toEqual([{ look: 'stays', words: 'B♭, D, F, A, C, E♭ and G stay' }]);
  });

  it('name the sheet', () => {
    const view = {
      ...steppedTo(steppedTo(B_FLAT, 2), 4),
      where: { strings: [5, 4] },
      instrument: instrumentFromId('drop-D+2')!,
    };
    expect(viewTitle(view, 'english')).toBe('IV of B♭ major: E♭');
    expect(sheetWords(view, 'english')).toBe(
      'drop D: D A D G B E · capo on fret 2, frets counted from it · strings 5–4 · names on the dots · ii to IV: E♭ and G stay, C goes, B♭ comes',
    );
    const plain = { ...view, from: null, degree: null, where: null };
    const on = (id: string, shown: View['shown']) =>
      sheetWords({ ...plain, instrument: instrumentFromId(id)!, shown }, 'english');
    expect(on('guitar', 'nothing')).toBe('guitar: E A D G B E');
    expect(on('guitar+1', 'degrees')).toBe(
      'guitar: E A D G B E · capo on fret 1, frets counted from it · degrees on the dots',
    );
  });
});
