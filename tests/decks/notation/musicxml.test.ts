import { execFileSync } from 'node:child_process';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { writeMusicXml } from '../../../src/decks/notation/musicxml.ts';
import { writtenFrom } from '../../../src/decks/notation/values.ts';
import { readNotes } from '../../../src/decks/notes.ts';
import { GUITAR } from '../../../src/neck/instrument.ts';
import { parseKey } from '../../../src/theory/key.ts';
import { add, beats, compare, toNumber } from '../../../src/theory/rhythm.ts';
import { instruments, keys, phrases } from '../arbitrary.ts';

const sheet = {
  title: 'Path',
  instrument: GUITAR,
  key: { tonic: 'Bb', scale: 'major' },
  beatsPerBar: 4,
} as const;

function xmlOf(texts: string[], other: object = {}): string {
  const notes = readNotes(texts);
  if ('fault' in notes) throw new Error(notes.fault);
  return writeMusicXml({ tempo: 72, notes }, { ...sheet, ...other });
}

const values = (xml: string) =>
  Array.from(
    xml.matchAll(
      /(<rest\/>)?(?:<pitch>.*?<\/pitch>)?<duration>(\d+).*?<type>(\w+)<\/type>(<dot\/>)?/g,
    ),
    ([, rest, , type, dot]) => `${rest ? 'rest ' : ''}${dot ? 'dotted ' : ''}${type}`,
  );

const hasXmllint = (() => {
  try {
    execFileSync('xmllint', ['--version'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
})();
if (!hasXmllint)
  console.warn('NOT CHECKED: there is no xmllint here, so no MusicXML is read by it.');

const anySheet = fc.tuple(instruments, keys).chain(([instrument, key]) =>
  fc.record({
    phrase: phrases(instrument, key),
    sheet: fc.record({
      title: fc.constantFrom('Path', `<b>&"it's"</b>`),
      instrument: fc.constant(instrument),
      key: fc.constant(key),
      beatsPerBar: fc.constantFrom(3, 4),
    }),
  }),
);

describe('written note values', () => {
  it('fill a stretch of time exactly, in order, none over a bar line', () => {
    const time = (...parts: number[]) =>
      fc.tuple(fc.nat({ max: 40 }), fc.constantFrom(...parts)).map(([n, d]) => beats(n, d));
    const stretch = fc.oneof(
      fc.tuple(time(1, 2, 3, 4, 6, 8, 12), time(1, 2, 3, 4, 6, 8, 12)),
      fc.tuple(time(1, 5, 10), time(1, 5, 10)),
      fc.tuple(time(1, 7, 9), time(1)),
    );
    fc.assert(
      fc.property(stretch, fc.constantFrom(3, 4, 5), ([a, b], bar) => {
        const [from, to] = compare(a, b) < 0 ? [a, b] : [b, a];
        let at = from;
        for (const one of writtenFrom(from, to, bar)) {
          expect(one.at).toEqual(at);
          at = add(at, one.length);
          const inBar = toNumber(one.at) % bar;
          expect(inBar + toNumber(one.length)).toBeLessThanOrEqual(bar + 1e-9);
          const plain =
            4 /
            2 **
              ['whole', 'half', 'quarter', 'eighth', '16th', '32nd', '64th', '128th'].indexOf(
                one.value,
              );
          const { actual, normal } = one.tuplet ?? { actual: 1, normal: 1 };
          expect(toNumber(one.length)).toBeCloseTo(
            (plain * (one.dotted ? 1.5 : 1) * normal) / actual,
            9,
          );
        }
        expect(at).toEqual(to);
      }),
    );
  });

  it('say so where a time is too fine to be written', () => {
    expect(() => writtenFrom(beats(0), beats(1, 64), 4)).toThrow('too fine to be written');
  });
});

describe('MusicXML with tablature', () => {
  it('writes triplets as three in the time of two', () => {
    const xml = xmlOf([
      'Bb3 for 1/3 on 3/3',
      'D4 on 2/3',
      'F4 on 1/1',
      'Eb4 for 1 on 2/4 by slide',
    ]);
    expect(values(xml)).toEqual(['eighth', 'eighth', 'eighth', 'quarter', 'rest half']);
    expect(xml.match(/<actual-notes>3<\/actual-notes><normal-notes>2</g)).toHaveLength(3);
    expect(xml).toContain('<pitch><step>B</step><alter>-1</alter><octave>3</octave></pitch>');
    expect(xml).toContain('<slide type="start"/><technical><string>1</string><fret>1</fret>');
    expect(xml).toContain('<slide type="stop"/><technical><string>2</string><fret>4</fret>');
    expect(xml).toContain('<fifths>-2</fifths>');
  });

  it('ties a note over a bar line and writes rests before and behind', () => {
    const xml = xmlOf(['Bb3 at 3 for 2']);
    expect(values(xml)).toEqual(['rest dotted half', 'quarter', 'quarter', 'rest dotted half']);
    expect(xml.match(/<tie type="start"\/>/g)).toHaveLength(1);
    expect(xml.match(/<measure /g)).toHaveLength(2);
  });

  // XML 1.0, 2.4: the signs that begin markup are written by name, the ampersand's own first.
  it('escapes what a title or an instrument is called by', () => {
    const xml = xmlOf(['Bb3'], {
      title: 'Quay & <Pier> &lt;',
      instrument: { ...GUITAR, name: 'a<b>&c' },
    });
    expect(xml).toContain('<work-title>Quay &amp; &lt;Pier&gt; &amp;lt;</work-title>');
    expect(xml).toContain('<part-name>a&lt;b&gt;&amp;c</part-name>');
  });

  it('tunes the staff from its lowest line up, and says where the capo lies', () => {
    const xml = xmlOf(['Bb3'], { instrument: { ...GUITAR, capo: 2 } });
    expect(xml).toContain(
      '<staff-tuning line="1"><tuning-step>E</tuning-step><tuning-octave>2</tuning-octave></staff-tuning>',
    );
    expect(xml).toContain('<capo>2</capo>');
  });

  // Open Music Theory v1, "Diatonic modes": a mode has the signature of the major scale whose notes it has.
  it.each([
    ['C major', 0],
    ['Bb major', -2],
    ['F# major', 6],
    ['Cb major', -7],
    ['G minor', -2],
    ['D# minor', 6],
    ['A harmonic minor', 0],
    ['C melodic minor', -3],
    ['D dorian', 0],
    ['Bb dorian', -4],
    ['E phrygian', 0],
    ['B phrygian', 1],
    ['F lydian', 0],
    ['Eb lydian', -2],
    ['G mixolydian', 0],
    ['A mixolydian', 2],
    ['B locrian', 0],
    ['F# locrian', 1],
    ['A minor pentatonic', 0],
    ['D major pentatonic', 2],
    ['E blues', 1],
    // Eight sharps, and eight flats, are no signature: every sign is written at its note.
    ['G# major', 0],
    ['Fb major', 0],
  ])('has the signature of %s: %i', (name, sharps) => {
    const xml = xmlOf(['C4 for 1'], { key: parseKey(name)! });
    expect(xml).toContain(`<key><fifths>${sharps}</fifths></key>`);
  });

  it('has bars that are all full', () => {
    fc.assert(
      fc.property(anySheet, ({ phrase, sheet: written }) => {
        const xml = writeMusicXml(phrase, written);
        const divisions = Number(/<divisions>(\d+)/.exec(xml)?.[1]);
        const bars = xml.match(/<measure [\s\S]*?<\/measure>/g) ?? [];
        for (const bar of bars) {
          const durations = Array.from(bar.matchAll(/<duration>(\d+)</g), ([, n]) => Number(n));
          expect(durations.reduce((sum, n) => sum + n, 0)).toBe(written.beatsPerBar * divisions);
        }
      }),
    );
  });

  it.runIf(hasXmllint)('is well-formed, as xmllint reads it', () => {
    const all = fc.sample(anySheet, { numRuns: 20, seed: 1 });
    for (const { phrase, sheet: written } of all) {
      const input = writeMusicXml(phrase, written);
      expect(() =>
        execFileSync('xmllint', ['--noout', '--nonet', '-'], { input, stdio: 'pipe' }),
      ).not.toThrow();
    }
  });
});
