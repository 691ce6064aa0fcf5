/** What of a card is on the screen, drawn without a browser: which places, for which hand, and in which words. */
import { h } from 'preact';
import { renderToString } from 'preact-render-to-string';
import { afterEach, describe, expect, it } from 'vitest';
import type { FaceProps, Presented } from '../../src/cards/kind.ts';
import { place } from '../../src/cards/place/index.ts';
import { play } from '../../src/cards/play/index.ts';
import { spot } from '../../src/cards/spot/index.ts';
import { readDeck } from '../../src/decks/document.ts';
import { drawnFor } from '../../src/parts/handedness.ts';
import type { Verdict } from '../../src/practice/item.ts';
import { itemIn, itemsIn } from './items.ts';

const NOTHING: Omit<FaceProps, 'card'> = {
  verdict: null,
  explanation: null,
  shown: {
    naming: 'english',
    chordNames: true,
    numerals: true,
    keySound: 'cadence',
  },
  guitar: null,
  answer() {},
  unheard() {},
  sounded() {},
  next() {},
};

const cardOf = (id: string, seed = 2) => spot.ask(itemIn(spot, id)!, seed);

/** The screen of a card: asked, or with its verdict. */
function seen(card: ReturnType<typeof cardOf>, verdict: Verdict | null = null, more: object = {}) {
  const explanation = verdict && spot.explain(card, verdict, verdict.takenFor ?? '', 'english');
  return renderToString(h(spot.Face, { ...NOTHING, card, verdict, explanation, ...more }));
}

const words = (html: string) => html.replaceAll(/<[^>]*>/g, ' ').replaceAll(/\s+/g, ' ');
const told = (html: string, name: string) => new RegExp(` ${name}="([^"]*)"`).exec(html)?.[1];

interface Cell {
  readonly string: number;
  readonly fret: number;
  readonly column: number;
  readonly row: number;
  readonly isDot: boolean;
}

/** Every place of the neck that is drawn. */
function cells(html: string): Cell[] {
  const found = html.matchAll(
    /grid-column:(\d+);grid-row:(\d+);" data-string="(\d)" data-fret="(\d+)"( data-dot)?/g,
  );
  return Array.from(found, ([, column, row, string, fret, dot]) => ({
    string: Number(string),
    fret: Number(fret),
    column: Number(column),
    row: Number(row),
    isDot: dot !== undefined,
  }));
}

const NATURAL: Readonly<Record<string, number>> = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 };
const NAMES = 'C Db D Eb E F Gb G Ab A Bb B'.split(' ');

/** What the dots sound on the open strings that the neck says it has, each note once. */
function sounds(html: string): string[] {
  const open = told(html, 'data-tuning')!
    .split(' ')
    .toReversed()
    .map((pitch) => {
      const signs = pitch.slice(1, -1);
      return NATURAL[pitch[0]!]! + (signs.includes('b') ? -1 : 1) * signs.length;
    });
  const classes = cells(html)
    .filter(({ isDot }) => isDot)
    .map(({ string, fret }) => (open[string - 1]! + fret) % 12);
  return [...new Set(classes)].toSorted((a, b) => a - b).map((one) => NAMES[one]!);
}

afterEach(() => {
  drawnFor.value = null;
});

describe('the dots of an arpeggio', () => {
  it.each([
    ['spot:Bb major:2:triad:guitar:4-3:1-7', 'E2 A2 D3 G3 B3 E4', 'C Eb G'],
    ['spot:Bb major:2:triad:guitar+3:4-3:1-7', 'G2 C3 F3 Bb3 D4 G4', 'C Eb G'],
    ['spot:Bb major:7:triad:guitar+1:3-2-1:3-7', 'F2 Bb2 Eb3 Ab3 C4 F4', 'C Eb A'],
    ['spot:G minor:3:seventh:drop-D:5-4-3:3-7', 'D2 A2 D3 G3 B3 E4', 'D F A Bb'],
    ['spot:D dorian:4:triad:open-G:4-3-2:1-5', 'D2 G2 D3 G3 B3 D4', 'D G B'],
    ['spot:Eb major:5:triad:ukulele:3-2-1:0-4', 'G4 C4 E4 A4', 'D F Bb'],
  ])('%s on %s sound %s', (id, tuning, notes) => {
    for (const seed of [2, 3, 4, 5, 6]) {
      const html = seen(cardOf(id, seed));
      expect(told(html, 'data-tuning')).toBe(tuning);
      expect(sounds(html).join(' ')).toBe(notes);
    }
  });

  it('tell nothing but their places until there is an answer', () => {
    const html = seen(cardOf('spot:Bb major:2:triad:guitar:4-3:1-7'));
    expect(html).not.toMatch(/data-(?:note|degree|verdict)=/);
    expect(words(html)).toContain('Which degree of B♭ major?');
  });

  it('lie with the highest string on the right, and for the left hand on the left', () => {
    const lesson = (leftHanded: boolean) => {
      const read = readDeck({
        version: 1,
        title: 'Tuesday',
        key: 'Bb major',
        instrument: { name: 'guitar', leftHanded },
        drills: [{ kind: 'spot', sizes: ['triad'], strings: ['5-4'], frets: [1, 8] }],
      });
      if ('fault' in read) throw new Error(read.fault);
      return seen(spot.ask(itemsIn(spot, read.deck)[0]!, 2));
    };
    const columns = (html: string) =>
      [1, 2, 3, 4, 5, 6].map((one) => cells(html).find(({ string }) => string === one)!.column);
    expect(columns(lesson(false))).toEqual([7, 6, 5, 4, 3, 2]);
    expect(columns(lesson(true))).toEqual([2, 3, 4, 5, 6, 7]);
    expect(sounds(lesson(true))).toEqual(sounds(lesson(false)));
    drawnFor.value = 'left';
    expect(columns(lesson(false))).toEqual([2, 3, 4, 5, 6, 7]);
    drawnFor.value = 'right';
    expect(columns(lesson(true))).toEqual([7, 6, 5, 4, 3, 2]);
  });
});

describe('the heading of a card', () => {
  const card = cardOf('spot:Bb major:2:triad:guitar:4-3:1-7');
  const right = { right: true, takenFor: null };

  it.each<[string, Verdict, Presented | null, string | undefined, string]>([
    ['right', right, null, 'right', 'Right. ii it is'],
    ['wrong', { right: false, takenFor: '4' }, null, 'wrong', 'Wrong. ii, not IV'],
    ['near', { right: false, takenFor: null, near: true }, null, 'near', 'Near. ii it is'],
    ['shown', { right: false, takenFor: null }, 'asked for', 'wrong', 'Shown: ii, Cm'],
    ['new', right, 'new', undefined, 'New: ii, Cm'],
  ])('that is %s says so', (_, verdict, presented, word, said) => {
    const html = seen(card, verdict, { presented });
    expect(told(html, 'data-verdict')).toBe(word);
    expect(words(html)).toContain(`${said} Cm stands on the second degree.`);
    expect(html.includes('data-new')).toBe(presented === 'new');
    expect(words(html)).not.toContain('Which degree');
  });

  it('offers both sounds only where another was named', () => {
    expect(words(seen(card, right))).toContain('Hear it');
    expect(words(seen(card, { right: false, takenFor: '4' }))).toContain('Hear both');
  });

  it('can be asked to show the answer only where somebody can be shown it', () => {
    expect(words(seen(card))).not.toContain('Show me');
    expect(words(seen(card, null, { show() {} }))).toContain('Show me');
    expect(words(seen(card, right, { show() {} }))).not.toContain('Show me');
  });
});

it('a chord to be placed says which, on which strings and between which frets', () => {
  const asked = place.ask(itemIn(place, 'place:Bb major:7:seventh:guitar+2:4-3-2-1:3-7')!, 2);
  const html = renderToString(h(place.Face, { ...NOTHING, card: asked }));
  expect(['chord', 'strings', 'frets'].map((name) => told(html, `data-${name}`))).toEqual([
    'Am7b5',
    '4 3 2 1',
    '3-7',
  ]);
  expect(told(html, 'data-tuning')).toBe('F#2 B2 E3 A3 C#4 F#4');
  expect(words(html)).toContain('Place Aø7');
});

it('an arpeggio to be played at a tempo says how many notes go to a beat; a phrase has its own rhythm', () => {
  const asked = (id: string) => {
    const card = play.ask(itemIn(play, `play:Bb major:2:triad:guitar:${id}`)!, 2);
    return words(renderToString(h(play.Face, { ...NOTHING, card })));
  };
  expect(asked('5-4:1-7:up:72')).toContain('from string 5, fret 3 · two notes a beat at 72');
  expect(asked('5-4:1-7:up')).not.toContain('beat');
  expect(asked('72 ii 3/5 2/4 1/3')).toContain('from string 3, fret 5 · at 72');
});
