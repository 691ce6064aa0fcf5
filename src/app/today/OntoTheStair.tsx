import { useEffect, useRef, useState } from 'preact/hooks';
import { usePlay } from '../../sound/usePlay.ts';

/** The picture's units: string by string, fret by fret, step by step. */
const STRING = { first: 14, apart: 21 };
const FRET = { nut: 18, long: 70, count: 4 };
const STEP = { wide: 40, low: 30, rise: 6, ground: 236 };
const NUMERALS = ['I', 'ii', 'iii', 'IV', 'V', 'vi', 'vii°'];

/** B♭ major's own triad: where each note lies on the neck, and the step of the key that it is. */
const NOTES = [
  { name: 'first', degree: 1, midi: 58, string: 3, fret: 3 },
  { name: 'third', degree: 3, midi: 62, string: 2, fret: 3 },
  { name: 'fifth', degree: 5, midi: 65, string: 1, fret: 1 },
] as const;

/** The notes are all on the stair, or so many of them. */
const ALL = NOTES.length;
const HOP = 200;

type Note = (typeof NOTES)[number];

const heightOf = (degree: number) => STEP.low + STEP.rise * (degree - 1);
const stringAt = (string: number) => STRING.first + STRING.apart * (string - 1);

const onNeck = ({ string, fret }: Note) =>
  [FRET.nut + FRET.long * (fret - 0.5), stringAt(string)] as const;
const onStep = ({ degree }: Note) =>
  [FRET.nut + STEP.wide * (degree - 0.5), STEP.ground - heightOf(degree) - 12] as const;

/** Three notes hop from the neck onto the stair of the degrees, once by themselves; tapped, they sound as they hop. */
export function OntoTheStair() {
  const [onStair, setOnStair] = useState(0);
  const touched = useRef(false);
  const play = usePlay();
  useEffect(() => {
    const timers = NOTES.map((_, index) =>
      setTimeout(() => touched.current || setOnStair(index + 1), 600 + HOP * 1.5 * index),
    );
    return () => timers.forEach(clearTimeout);
  }, []);
  const tap = () => {
    touched.current = true;
    setOnStair(0);
    const notes = NOTES.map(({ midi, string }, at) => ({ midi, string, at, length: 1 }));
    play(
      { notes, tempo: 100 },
      { onNote: (index) => setOnStair(index + 1), onEnd: () => setOnStair(ALL) },
    );
  };
  return (
    <button type="button" class="onto-the-stair" onClick={tap}>
      <span class="unseen">
        Hear the first arpeggio of B♭ major: its notes are degrees 1, 3 and 5
      </span>
      <svg viewBox="0 0 316 238" aria-hidden="true">
        <NeckAndStair />
        {NOTES.slice(0, onStair).map((note) => (
          <Hop key={note.name} {...note} />
        ))}
        {NOTES.map((note, index) => {
          const { name, degree } = note;
          const [x, y] = index < onStair ? onStep(note) : onNeck(note);
          return (
            <g
              key={name}
              class={`note ${name}`}
              // Where it lies in the page as it comes, which takes no styles but those of its sheet.
              transform={`translate(${onNeck(note)[0]})`}
              style={{ transform: `translateX(${x}px)` }}
            >
              <g
                transform={`translate(0 ${onNeck(note)[1]})`}
                style={{ transform: `translateY(${y}px)` }}
              >
                {degree === 1 ? (
                  <rect x={-11} y={-11} width={22} height={22} rx={4} />
                ) : (
                  <circle r={11.5} />
                )}
                <text y={5}>{degree}</text>
              </g>
            </g>
          );
        })}
      </svg>
    </button>
  );
}

/** Where a note was on the neck, and the way that it took. */
function Hop(note: Note) {
  const [[fromX, fromY], [toX, toY]] = [onNeck(note), onStep(note)];
  const top = fromY - 30;
  return (
    <g class="hop">
      <circle cx={fromX} cy={fromY} r={6} />
      <path d={`M${fromX} ${fromY}C${fromX} ${top} ${toX} ${top} ${toX} ${toY}`} />
    </g>
  );
}

/** Six strings, the nut and four frets; beneath them the seven steps. */
function NeckAndStair() {
  const [top, bottom] = [stringAt(1), stringAt(6)];
  const end = FRET.nut + FRET.long * FRET.count;
  return (
    <>
      <g class="frets">
        {Array.from({ length: FRET.count + 1 }, (_, fret) => {
          const x = FRET.nut + FRET.long * fret;
          return (
            <line key={fret} class={fret === 0 ? 'nut' : ''} x1={x} x2={x} y1={top} y2={bottom} />
          );
        })}
      </g>
      <g class="strings">
        {[1, 2, 3, 4, 5, 6].map((string) => {
          const y = stringAt(string);
          return (
            <line
              key={string}
              x1={FRET.nut}
              x2={end}
              y1={y}
              y2={y}
              stroke-width={0.8 + 0.25 * string}
            />
          );
        })}
      </g>
      <g class="steps">
        {NUMERALS.map((numeral, index) => {
          const height = heightOf(index + 1);
          const x = FRET.nut + STEP.wide * index;
          const y = STEP.ground - height;
          return (
            <g key={numeral}>
              <rect x={x + 1} y={y} width={STEP.wide - 2} height={height} rx={4} />
              <text x={x + STEP.wide / 2} y={y + 19}>
                {numeral}
              </text>
            </g>
          );
        })}
      </g>
    </>
  );
}
