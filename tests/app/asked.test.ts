/** What of a lesson can be asked now, and what a screen of what is known is about. */
import { beforeEach, describe, expect, it, vi } from 'vitest';

vi.mock('../../src/listening/index.ts', async (original) => {
  const { signal } = await import('../../src/signals/signal.ts');
  return { ...(await original<object>()), microphoneState: signal('closed') };
});
vi.stubGlobal('document', { documentElement: { dataset: {} }, addEventListener() {} });
vi.stubGlobal('location', { hash: '' });
const { itemsOf } = await import('../../src/cards/index.ts');
const { makeReady } = await import('../../src/app/guitar/inHand.ts');
const { itemsIn } = await import('../../src/app/known/scope.ts');
const { askable, failed } = await import('../../src/app/round/askable.ts');
const { lessons, memory, settings } = await import('../../src/app/state.ts');
const { USUAL } = await import('../../src/app/settings.ts');
const { microphoneState } = await import('../../src/listening/index.ts');
const { replay } = await import('../../src/memory/memory.ts');
const { deckIn } = await import('../cards/decks.ts');
const { reviewOf } = await import('../memory/reviews.ts');

const onNeck = { degrees: [2], sizes: ['triad'], strings: [[5, 4]], frets: [1, 7] } as const;
const heard = { degrees: [2], sizes: ['triad'], contours: ['up'], tempo: 72 } as const;
const deck = {
  ...deckIn('Bb major'),
  drills: [
    { kind: 'spot', ...onNeck },
    { kind: 'trace', ...heard },
    { kind: 'play', ...onNeck, ways: ['up'] },
    { kind: 'echo', ...heard },
  ],
} as const;
const lesson = { id: 'd', deck, document: {}, added: 0, away: false } as never;

beforeEach(() => {
  lessons.value = [lesson];
  settings.value = USUAL;
  failed.value = [];
});

describe('what can be asked', () => {
  const kinds = () => askable('d').map(({ kind }) => kind);
  const withGuitar = (inHand: boolean) => {
    makeReady(0, {} as never);
    (microphoneState as { value: string }).value = inHand ? 'listening' : 'closed';
  };

  // A line to be played back needs both.
  it.each([
    [true, false, ['spot', 'trace']],
    [false, false, ['spot']],
    [true, true, ['spot', 'trace', 'play', 'echo']],
    [false, true, ['spot', 'play']],
  ])('sounding %s, the guitar in hand %s, are %o', (sounds, inHand, asked) => {
    settings.value = { ...USUAL, muted: !sounds };
    withGuitar(inHand);
    expect(kinds()).toEqual(asked);
  });

  it('is nothing that could not be drawn before', () => {
    withGuitar(false);
    const [spot] = itemsOf(deck);
    failed.value = [spot!];
    expect(kinds()).toEqual(['trace']);
  });
});

describe('what is known', () => {
  const asked = [
    'spot:Bb major:5:triad:guitar:4-3:1-7',
    'trace:Bb major:1:seventh:guitar:up:60',
    'spot:G minor:5:triad:guitar:4-3:1-7',
    'spot:Bb major:5:triad:guitar+2:4-3:1-7',
    'spot:Bb major:5:triad:drop-D:4-3:1-7',
    'nothing that is known',
  ];

  it('is of the lesson, or of all that was asked in its key on its instrument', () => {
    memory.value = { of: replay(asked.map((item, n) => reviewOf({ n: n + 1, item }))) };
    expect(itemsIn('lesson', lesson).map(({ id }) => id)).toEqual(
      itemsOf(deck).map(({ id }) => id),
    );
    expect(itemsIn('key', lesson).map(({ id }) => id)).toEqual(asked.slice(0, 2));
  });
});
