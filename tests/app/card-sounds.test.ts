/** What a card lets hear by itself, and in which order: key, phrase, the right answer and the wrong one. */
import { h, type FunctionComponent } from 'preact';
import { renderToString } from 'preact-render-to-string';
import { beforeEach, expect, it, vi } from 'vitest';
import type { FaceProps } from '../../src/cards/kind.ts';
import { itemOf, KINDS } from '../../src/cards/index.ts';
import type { Verdict } from '../../src/practice/item.ts';
import type { PlayOptions, Sounding } from '../../src/sound/index.ts';
import { keySounding, type KeySound } from '../../src/sound/key.ts';
import type { Phrase } from '../../src/theory/phrase.ts';

const heard = vi.hoisted(() => [] as { sounding: unknown; options: unknown }[]);
// What a screen does once it is shown is done at once, and once, where it is drawn into a text.
vi.mock('preact/hooks', async (original) => {
  const hooks = await original<typeof import('preact/hooks')>();
  const useEffect = (done: () => void) => {
    const isDone = hooks.useRef(false);
    if (!isDone.current) done();
    isDone.current = true;
  };
  return { ...hooks, useEffect };
});
vi.mock('../../src/sound/usePlay.ts', () => ({
  usePlay: () => (sounding: unknown, options: unknown) => {
    heard.push({ sounding, options });
    return { stop() {}, done: new Promise(() => {}), heard: () => 0 };
  },
}));

beforeEach(() => {
  heard.length = 0;
});

/** Shows a card, lets each thing that sounds come to its end, and gives their pitches one after the other. */
function soundsOf(
  id: string,
  { answer, keySound = 'cadence', isNew = false }: Partial<Ask> = {},
): { pitches: number[][]; phrase: number[] } {
  const item = itemOf(id)!;
  const kind = KINDS[item.kind];
  const card = kind.ask(item, 2);
  const right = kind.answers(card)?.find((one) => kind.judge(card, one).right) ?? '';
  const wrong = kind.answers(card)?.find((one) => !kind.judge(card, one).right) ?? '';
  const given = answer === 'wrong' ? wrong : right;
  const verdict: Verdict | null = answer ? kind.judge(card, given) : null;
  const shown = { naming: 'english', chordNames: true, numerals: true, keySound } as const;
  const props: FaceProps = {
    card,
    verdict,
    explanation: verdict && kind.explain(card, verdict, given, 'english'),
    shown,
    presented: isNew ? 'new' : null,
    guitar: null,
    answer() {},
    unheard() {},
    sounded() {},
    next() {},
  };
  renderToString(h(kind.Face as FunctionComponent<FaceProps>, props));
  for (let i = 0; i < heard.length && i < 9; i++) (heard[i]!.options as PlayOptions).onEnd?.();
  const pitches = heard.map(({ sounding }) => (sounding as Sounding).notes.map(({ midi }) => midi));
  const phrase = 'phrase' in card ? (card.phrase as Phrase).notes.map(({ midi }) => midi) : [];
  return { pitches, phrase };
}

interface Ask {
  answer: 'right' | 'wrong';
  keySound: KeySound;
  isNew: boolean;
}

const TRACE = 'trace:Bb major:2:triad:guitar:turn:72';
const KEY = { tonic: 'Bb', scale: 'major' } as const;
const key = (how: KeySound) => keySounding(KEY, how).notes.map(({ midi }) => midi);

it.each(['cadence', 'drone', 'chord'] as const)(
  'a phrase is heard after its key, as a %s',
  (how) => {
    const { pitches, phrase } = soundsOf(TRACE, { keySound: how });
    expect(pitches).toEqual([key(how), phrase]);
  },
);

it('a right path is heard once more, without the key', () => {
  const { pitches, phrase } = soundsOf(TRACE, { answer: 'right' });
  expect(pitches).toEqual([phrase]);
});

it('after a wrong path the right one is heard first, then the one that was tapped', () => {
  const { pitches, phrase } = soundsOf(TRACE, { answer: 'wrong' });
  expect(pitches).toHaveLength(2);
  expect(pitches[0]).toEqual(phrase);
  expect(pitches[1]).not.toEqual(phrase);
  expect(pitches[1]).toHaveLength(phrase.length);
});

it('what is new is heard after its key', () => {
  const { pitches, phrase } = soundsOf(TRACE, { answer: 'right', isNew: true });
  expect(pitches).toEqual([key('cadence'), phrase]);
});

// C E♭ G on strings 3 to 1.
it('an eye card is silent while it is asked or looked back on, and sounds where it is new', () => {
  const SPOT = 'spot:Bb major:2:triad:guitar:3-2-1:3-7';
  expect(soundsOf(SPOT).pitches).toEqual([]);
  expect(soundsOf(SPOT, { answer: 'right' }).pitches).toEqual([]);
  expect(soundsOf(SPOT, { answer: 'wrong' }).pitches).toEqual([]);
  const [arpeggio, ...more] = soundsOf(SPOT, { answer: 'right', isNew: true }).pitches;
  expect(new Set(arpeggio!.map((midi) => midi % 12))).toEqual(new Set([0, 3, 7]));
  expect(more).toEqual([]);
});
