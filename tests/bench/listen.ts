/**
 * How well the judge hears: outside guitars, notes summed into phrases with known truth, every row of the bars. Two cores
 * take an hour for the whole of it (`npm run listen`); `npm run listen -- 20` takes a twentieth of the notes,
 * `-- 20 ringing` only the rows so named, `-- 20 "" reported` only the guitars that nothing was tuned on, `-- fit 6` finds the weights of `src/listening/evidence.ts` anew.
 */
import { REPORTED, TUNED_ON, type Guitar, type Source } from './listening/bank.ts';
import { fit } from './listening/fit.ts';
import { makePiece, type Conditions } from './listening/phrases.ts';
import { addTo, emptyScore, listen, type Score } from './listening/score.ts';

const HARD = { noise: 20, phone: true, room: 0.4, click: true } as const;
const tempos = [60, 90, 120, 160];

const ROWS: readonly (readonly [string, Conditions])[] = [
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
const LEARNT: readonly Conditions[] = [
  ...[60, 120, 160].map((tempo) => ({ tempo, ringing: 'strings' }) as const),
  { tempo: 120, ringing: 'damped' },
  ...[90, 160].map((tempo) => ({ tempo, ringing: 'all' }) as const),
  ...[120, 160].map((tempo) => ({ tempo, ringing: 'strings', ...HARD }) as const),
  { tempo: 120, ringing: 'strings', noise: 10 },
  { tempo: 100, ringing: 'strings', room: 0.6 },
  { tempo: 100, ringing: 'strings', thumps: true },
];

/** Notes a row. */
const NOTES = 2000;

const percent = (of: number, all: number) => (all === 0 ? '–' : ((100 * of) / all).toFixed(1));

/** Upper end of the 95 % interval of a share, in per cent (Wilson 1927). */
function bound(of: number, all: number): string {
  if (all === 0) return '–';
  const [z, p] = [1.96, of / all];
  const middle = p + (z * z) / (2 * all);
  const wide = z * Math.sqrt((p * (1 - p)) / all + (z * z) / (4 * all * all));
  return ((100 * (middle + wide)) / (1 + (z * z) / all)).toFixed(1);
}

function quantile(values: readonly number[], part: number): string {
  const sorted = values.toSorted((a, b) => a - b);
  return (sorted[Math.floor(part * (sorted.length - 1))] ?? NaN).toFixed(1);
}

function print(name: string, score: Score): void {
  const { wrongs, right } = score;
  const errors = score.errors.map(Math.abs);
  const mistakes = (['semitone', 'octave', 'other', 'skipped'] as const).map(
    (kind) => `${wrongs[kind].letThrough}/${wrongs[kind].of}`,
  );
  const named = (['semitone', 'octave', 'other', 'skipped', 'extra', 'again'] as const).map(
    (kind) => percent(wrongs[kind].named, wrongs[kind].of),
  );
  console.log(
    [
      name.padEnd(24),
      `${right}`.padStart(5),
      `${percent(score.accepted, right)}`.padStart(6),
      `at once ${percent(score.atOnce, right)}`,
      `called wrong ${percent(score.accused, right)} (≤${bound(score.accused, right)})`,
      `let through ${mistakes.join(' ')}`,
      `told ${named.join('/')}`,
      `false extras ${percent(score.extras, score.notes)}`,
      `time 95 % ${quantile(errors, 0.95)} ms`,
      `soon ${percent(score.soon, score.settled)}`,
    ].join('  '),
  );
}

function merge(into: Score, from: Score): void {
  for (const kind of Object.keys(into.wrongs) as (keyof Score['wrongs'])[]) {
    into.wrongs[kind].of += from.wrongs[kind].of;
    into.wrongs[kind].letThrough += from.wrongs[kind].letThrough;
    into.wrongs[kind].named += from.wrongs[kind].named;
  }
}

/** Runs one row over as many pieces as hold so many notes. */
function row(
  guitars: readonly Guitar[],
  conditions: Conditions,
  notes: number,
  seed: number,
): Score {
  const score = emptyScore();
  for (let i = 0; score.notes < notes; i++) {
    const guitar = guitars[i % guitars.length]!;
    const piece = makePiece(guitar, { ...conditions, varied: true }, seed + i);
    addTo(score, piece, listen(piece));
  }
  return score;
}

function study(title: string, sources: readonly Source[], part: number, only: string): void {
  console.log(`\n${title}`);
  const guitars = sources.flatMap((source) => {
    const own = source.load();
    const dropped = own.reduce((sum, guitar) => sum + guitar.dropped, 0);
    console.log(
      `${source.name} (${source.licence}): ${own.length} guitars, ${dropped} notes left out`,
    );
    return own;
  });
  console.log('row, right notes, % accepted; told: semitone/octave/other/skipped/extra/again');
  const pooled = emptyScore();
  ROWS.forEach(([name, conditions], i) => {
    if (!name.includes(only)) return;
    const score = row(guitars, conditions, NOTES / part, 1_000_000 + 10_000 * i);
    print(name, score);
    merge(pooled, score);
  });
  for (const kind of ['semitone', 'octave', 'other', 'skipped'] as const) {
    const { of, letThrough } = pooled.wrongs[kind];
    console.log(`${kind} let through: ${letThrough} of ${of}, at most ${bound(letThrough, of)} %`);
  }
}

const [first = '1', second = '', set = ''] = process.argv.slice(2);
if (first === 'fit') {
  fit(
    TUNED_ON.flatMap((source) => source.load()),
    LEARNT,
    Number(second || 6),
  );
} else {
  if (set !== 'reported') study('Tuned on', TUNED_ON, Number(first), second);
  if (set !== 'tuned') study('Reported only', REPORTED, Number(first), second);
}
