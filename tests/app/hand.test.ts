/** How long a guitar counts as tuned up, and which cards it may be in hand for. */
import { afterAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { KIND_NAMES } from '../../src/decks/kinds.ts';
import { GUITAR, INSTRUMENTS } from '../../src/neck/instrument.ts';

vi.stubGlobal('document', { documentElement: { dataset: {} } });
vi.stubGlobal('location', { hash: '' });
await import('../../src/cards/index.ts');
const { isPlayable, makeReady, takeUpFreely } = await import('../../src/app/guitar/inHand.ts');
const { LENT } = await import('../../src/app/guitar/lent.ts');
const { tunedBefore } = await import('../../src/app/guitar/tunedBefore.ts');
const { settings } = await import('../../src/app/state.ts');
const { USUAL } = await import('../../src/app/settings.ts');

const before = process.env.TZ;
afterAll(() => {
  process.env.TZ = before ?? 'UTC';
});

describe('a guitar that was tuned up', () => {
  const bass = INSTRUMENTS.find(({ name }) => name === 'bass')!;
  const local = (day: number, hour: number, minute = 0) =>
    new Date(2026, 10, day, hour, minute).getTime();
  beforeEach(() => {
    process.env.TZ = 'Pacific/Auckland';
    const tuned = { at: local(28, 21), instrument: 'guitar', offset: -12 };
    settings.value = { ...USUAL, guitar: { ...USUAL.guitar, tuned } };
  });

  // A day ends at four in the morning, on the clock of the wall.
  it.each([
    [28, 4, 0, -12],
    [28, 21, 30, -12],
    [29, 3, 59, -12],
    [29, 4, 0, null],
    [28, 3, 59, null],
    [27, 21, 0, null],
  ])('on day %i at %i:%i is so many cents off: %s', (day, hour, minute, cents) => {
    expect(tunedBefore(GUITAR, local(day, hour, minute))).toBe(cents);
  });

  it('is that instrument and no other, wherever its capo lies it is another', () => {
    const now = local(28, 22);
    expect(tunedBefore(bass, now)).toBeNull();
    expect(tunedBefore({ ...GUITAR, capo: 2 }, now)).toBeNull();
    expect(tunedBefore({ ...GUITAR, leftHanded: true }, now)).toBe(-12);
  });

  it('in this round is as it was in this round', () => {
    makeReady(7, LENT);
    expect(tunedBefore(bass, local(30, 12))).toBe(7);
    takeUpFreely();
    expect(tunedBefore(GUITAR, local(28, 22))).toBe(7);
  });
});

it('may be in hand for what is placed, filled in, kept in time, played and played back', () => {
  expect(KIND_NAMES.filter((kind) => isPlayable({ kind }))).toEqual([
    'place',
    'follow',
    'fill',
    'play',
    'echo',
    'pulse',
  ]);
});
