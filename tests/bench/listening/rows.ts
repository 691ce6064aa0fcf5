/** The rows of the study: under which conditions phrases are played. */
import { addTo, emptyScore, listen, type Score } from './score.ts';
import type { Guitar } from './bank.ts';
import { makePiece, type Conditions } from './phrases.ts';

const HARD = { noise: 20, phone: true, room: 0.4, click: true } as const;
const tempos = [60, 90, 120, 160];

export const ROWS: readonly (readonly [string, Conditions])[] = [
  ...tempos.map((tempo) => [`damped ${tempo}`, { tempo, ringing: 'damped' }] as const),
  ...tempos.map((tempo) => [`ringing ${tempo}`, { tempo, ringing: 'strings' }] as const),
  ['nothing ever damped 120', { tempo: 120, ringing: 'all' }],
  ...tempos.map((tempo) => [`hard ${tempo}`, { tempo, ringing: 'strings', ...HARD }] as const),
  ['free tempo', { free: true, ringing: 'strings' }],
  ['stops, restarts', { tempo: 100, ringing: 'strings', restarts: true }],
  ['noise 20 dB', { tempo: 90, ringing: 'strings', noise: 20 }],
  ['noise 10 dB', { tempo: 90, ringing: 'strings', noise: 10 }],
  ['room .3 s', { tempo: 90, ringing: 'strings', room: 0.3 }],
  ['room .6 s', { tempo: 90, ringing: 'strings', room: 0.6 }],
  ['phone', { tempo: 90, ringing: 'strings', phone: true }],
  ['click', { tempo: 90, ringing: 'strings', click: true }],
  ['thumps', { tempo: 90, ringing: 'strings', thumps: true }],
  ['clipping', { tempo: 90, ringing: 'strings', clipping: true }],
  ['gain ±8 dB', { tempo: 90, ringing: 'strings', gain: true }],
];

/** What the weights are found on. */
export const LEARNT: readonly Conditions[] = [
  ...[60, 120, 160].map((tempo) => ({ tempo, ringing: 'strings' }) as const),
  { tempo: 120, ringing: 'damped' },
  ...[90, 160].map((tempo) => ({ tempo, ringing: 'all' }) as const),
  ...[120, 160].map((tempo) => ({ tempo, ringing: 'strings', ...HARD }) as const),
  { tempo: 120, ringing: 'strings', noise: 10 },
  { tempo: 100, ringing: 'strings', room: 0.6 },
  { tempo: 100, ringing: 'strings', thumps: true },
];

/** What octaves are told apart on: most of what they are taken for one another in, and mistakes enough. */
export const LEARNT_OCTAVES: readonly Conditions[] = [
  ...LEARNT,
  ...[{ clipping: true }, { phone: true }, { room: 0.3 }].map(
    (own) => ({ tempo: 90, ringing: 'strings', ...own }) as const,
  ),
].map((conditions) => ({ ...conditions, mistakes: 0.7 }));

/** Plays and judges a row, by its index, until so many notes were asked. */
export function scoreOf(guitars: readonly Guitar[], row: number, notes: number): Score {
  const score = emptyScore();
  const seed = 1_000_000 + 10_000 * row;
  for (let i = 0; score.notes < notes; i++) {
    const guitar = guitars[i % guitars.length]!;
    const piece = makePiece(guitar, { ...ROWS[row]![1], varied: true }, seed + i);
    addTo(score, piece, listen(piece));
  }
  return score;
}
