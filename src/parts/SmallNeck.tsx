import type { Instrument } from '../neck/instrument.ts';
import type { Place } from '../neck/place.ts';
import type { Member } from '../theory/chord.ts';
import { isLeftHanded } from './handedness.ts';
import { hasInlay, span } from './neckLayout.ts';
import './SmallNeck.css';

/** A dot of a small neck: a chord member, or a pie. */
export interface SmallDot extends Place {
  readonly member?: Member;
  /** How full it is, 0 to 1. */
  readonly filled?: number;
  /** Whether a ring stands around it. */
  readonly ringed?: boolean;
}

interface SmallNeckProps {
  instrument: Instrument;
  /** Lowest and highest fret drawn; 0 draws the open strings beyond the nut. */
  frets: readonly [number, number];
  dots: readonly SmallDot[];
  /** Whether it lies down. */
  lies?: boolean;
  /** What a screen reader calls it; nothing where what it stands in has a name. */
  label?: string;
}

/** From string to string and from fret to fret, and the room at the edges, in the picture's own units. */
const [STRING, FRET, EDGE] = [16, 18, 11];

/** The room that numbers of frets take beside that. */
const NUMBERS = 6;

/** A neck that is only looked at, as small as a word or as wide as the screen. */
export function SmallNeck({ instrument, frets, dots, lies = false, label }: SmallNeckProps) {
  const [low, high] = frets;
  const strings = instrument.tuning.length;
  const [across, along] = [(strings - 1) * STRING, (high - low + 1) * FRET];
  const leftHanded = isLeftHanded(instrument);
  // Upright, frets run down and the highest string is on the right; lying, the nut is on the left and that string on top.
  const at = (string: number, fret: number): [number, number] => {
    const [one, way] = [STRING * (string - 1), FRET * (fret - low + 0.5)];
    if (lies) return [EDGE + (leftHanded ? along - way : way), EDGE + one];
    return [NUMBERS + EDGE + (leftHanded ? one : across - one), EDGE + way];
  };
  const line = (from: [number, number], to: [number, number], name: string, width: number) => (
    <line
      key={`${name}${from.join()}`}
      class={name}
      x1={from[0]}
      y1={from[1]}
      x2={to[0]}
      y2={to[1]}
      stroke-width={width}
    />
  );
  const edge = Math.max(low - 0.5, 0.5);
  const [width, height] = lies ? [along, across + NUMBERS] : [across + NUMBERS, along];
  return (
    <svg
      class="small-neck"
      viewBox={`0 0 ${width + 2 * EDGE} ${height + 2 * EDGE}`}
      role={label ? 'img' : undefined}
      aria-label={label}
      aria-hidden={label ? undefined : true}
    >
      {span(Math.max(low - 1, 0), high).map((fret) =>
        line(at(strings, fret + 0.5), at(1, fret + 0.5), fret === 0 ? 'nut' : 'fret', 1),
      )}
      {span(1, strings).map((string) =>
        line(at(string, edge), at(string, high + 0.5), 'string', 0.6 + 0.2 * string),
      )}
      <FretNumbers
        frets={frets}
        capo={instrument.capo}
        at={(fret) =>
          lies ? [at(1, fret)[0], height + 2 * EDGE - NUMBERS] : [NUMBERS, at(1, fret)[1]]
        }
      />
      {dots.map((dot) => (
        <Mark key={`${dot.string}/${dot.fret}`} dot={dot} at={at(dot.string, dot.fret)} />
      ))}
    </svg>
  );
}

interface FretNumbersProps {
  frets: readonly [number, number];
  capo: number;
  at(fret: number): [number, number];
}

/** The numbers of the frets that have an inlay; of the first one where none has. */
function FretNumbers({ frets: [low, high], capo, at }: FretNumbersProps) {
  const all = span(Math.max(low, 1), high);
  const inlaid = all.filter((fret) => hasInlay(fret, capo));
  return (
    <>
      {(inlaid.length > 0 ? inlaid : all.slice(0, 1)).map((fret) => {
        const [x, y] = at(fret);
        return (
          <text key={fret} x={x} y={y + 2.5}>
            {fret}
          </text>
        );
      })}
    </>
  );
}

function Mark({
  dot: { member, filled, ringed },
  at: [x, y],
}: {
  dot: SmallDot;
  at: [number, number];
}) {
  const around = 4.5 * Math.PI;
  return (
    <g
      class={`mark ${member ? `member-${member}` : ''} ${filled === undefined ? '' : 'pie'}`}
      transform={`translate(${x} ${y})`}
    >
      {ringed && <circle class="ring" r={7.75} />}
      {member === 1 ? <rect x={-5} y={-5} width={10} height={10} rx={1.5} /> : <circle r={5.25} />}
      {filled !== undefined && (
        <circle
          class="full"
          r={2.25}
          transform="rotate(-90)"
          stroke-dasharray={`${around * filled} ${around}`}
        />
      )}
      {member && <text y={3}>{member}</text>}
    </g>
  );
}
