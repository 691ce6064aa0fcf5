import { REPORTED, TUNED_ON } from './listening/bank.ts';
import { makePiece, type Conditions } from './listening/phrases.ts';
import { fit } from './listening/fit.ts';
import { addTo, emptyScore, listen } from './listening/score.ts';
const ROWS: [string, Conditions][] = [
  ['damped 60', { tempo: 60, ringing: 'damped' }],
  ['damped 120', { tempo: 120, ringing: 'damped' }],
  ['damped 160', { tempo: 160, ringing: 'damped' }],
  ['ringing 60', { tempo: 60, ringing: 'strings' }],
  ['ringing 90', { tempo: 90, ringing: 'strings' }],
  ['ringing 120', { tempo: 120, ringing: 'strings' }],
  ['ringing 160', { tempo: 160, ringing: 'strings' }],
  ['all ring 120', { tempo: 120, ringing: 'all' }],
  ['all ring 160', { tempo: 160, ringing: 'all' }],
  ['hard 120', { tempo: 120, ringing: 'strings', noise: 20, phone: true, room: 0.4, click: true }],
  ['free', { free: true, ringing: 'strings' }],
  ['restarts', { tempo: 100, ringing: 'strings', restarts: true }],
  ['noise 10', { tempo: 90, ringing: 'strings', noise: 10 }],
  ['room .6', { tempo: 90, ringing: 'strings', room: 0.6 }],
];
const guitars = (process.env.SET === 'reported' ? REPORTED : TUNED_ON).flatMap((s) => s.load());
const per = Number(process.env.PER ?? 3);
const q = (x: number[], p: number) => x.toSorted((a, b) => a - b)[Math.floor(p * (x.length - 1))]!;
if (process.env.FIT) {
  fit(
    guitars,
    [
      { tempo: 60, ringing: 'strings' },
      { tempo: 120, ringing: 'damped' },
      { tempo: 120, ringing: 'strings' },
      { tempo: 160, ringing: 'strings' },
      { tempo: 160, ringing: 'all' },
      { tempo: 90, ringing: 'all' },
      { tempo: 120, ringing: 'strings', noise: 20, phone: true, room: 0.4, click: true },
      { tempo: 160, ringing: 'strings', noise: 20, phone: true, room: 0.4, click: true },
      { tempo: 120, ringing: 'strings', noise: 10 },
      { tempo: 100, ringing: 'strings', room: 0.6 },
      { tempo: 100, ringing: 'strings', thumps: true },
    ],
    per,
  );
  process.exit();
}
let seed = Number(process.env.SEED ?? 5000);
for (const [name, conditions] of ROWS) {
  if (process.env.ROW && !name.includes(process.env.ROW)) continue;
  const score = emptyScore();
  let ms = 0,
    audio = 0;
  for (const guitar of guitars)
    for (let k = 0; k < per; k++) {
      const piece = makePiece(guitar, { ...conditions, varied: true }, seed++);
      const t = performance.now();
      const run = listen(piece);
      ms += performance.now() - t;
      audio += piece.samples.length / 44.1;
      addTo(score, piece, run);
      if (process.env.WHY)
        piece.expected.forEach((m, i) => {
          const p = piece.plucks.find((x) => x.answers === i);
          const v = run.performance.notes[i]!;
          if (p && !p.mistake && v.verdict !== 'right')
            console.log(
              guitar.name,
              seed - 1,
              i,
              m,
              p.time.toFixed(2),
              JSON.stringify(v),
              run.atOnce.get(i)?.toFixed(2),
            );
        });
    }
  const w = score.wrongs;
  console.log(
    name.padEnd(13),
    'n',
    score.notes,
    'accepted',
    ((100 * score.accepted) / score.right).toFixed(1),
    'at once',
    ((100 * score.atOnce) / score.right).toFixed(1),
    'accused',
    ((100 * score.accused) / score.right).toFixed(1),
    'unheard',
    ((100 * score.unheard) / score.notes).toFixed(1),
    'through',
    (['semitone', 'octave', 'other', 'skipped'] as const)
      .map((k) => `${w[k].letThrough}/${w[k].of}`)
      .join(' '),
    'named',
    (['semitone', 'octave', 'other', 'skipped', 'extra', 'again'] as const)
      .map((k) => `${w[k].named}/${w[k].of}`)
      .join(' '),
    'false extras/100',
    ((100 * score.extras) / score.notes).toFixed(1),
    'err',
    q(score.errors, 0.5).toFixed(1),
    'abs95',
    q(score.errors.map(Math.abs), 0.95).toFixed(1),
    'soon',
    ((100 * score.soon) / score.settled).toFixed(1),
    'cost',
    ((100 * ms) / audio).toFixed(1) + '%',
  );
}
