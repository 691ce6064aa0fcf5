import { soundingPitches } from '../neck/instrument.ts';
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { Instrument } from '../neck/instrument.ts';
import { placeLabel, type Place } from '../neck/place.ts';
import type { Member } from '../theory/chord.ts';
import type { Key } from '../theory/key.ts';
import { absolute, MEMBER_NAMES, noteLabel, type Naming } from '../theory/naming.ts';
import { parsePitch } from '../theory/note.ts';
import { isLeftHanded } from './handedness.ts';
import { bringIntoSight } from './inSight.ts';
import { useLying } from './lying.ts';
import { cell, hasInlay, neighbour, rowsOf, span, type Layout } from './neckLayout.ts';
import { Lines } from './NeckLines.tsx';
import './Neck.css';

/** A dot to draw. Without a member it is plain ink and tells nothing but its place. */
export interface NeckDot extends Place {
  readonly member?: Member;
  /** The note's name in ASCII and the degree it is in the key: given only where the dot may be named. */
  readonly note?: string;
  readonly degree?: number;
  /** What stands in the dot instead of its member. */
  readonly text?: string;
  /** How full the dot is, 0 to 1: then it is a pie in plain ink. */
  readonly filled?: number;
  /** What a screen reader says of it besides its name, where that is not its member; and last of all. */
  readonly said?: string;
  readonly moved?: string;
  /**
   * `comes` and `goes`: what a step from one arpeggio to another brings and takes away. `bent` and `unbent`: where a
   * shape moved to other strings lies, and where it would lie if all were tuned alike.
   */
  readonly look?: 'plain' | 'wrong' | 'missing' | 'faint' | 'comes' | 'goes' | 'bent' | 'unbent';
}

interface NeckProps {
  instrument: Instrument;
  /** In which key and words notes are named. */
  musicKey: Key;
  naming: Naming;
  /** Lowest and highest fret drawn; 0 draws the open strings above the nut. */
  frets: readonly [number, number];
  /** What a screen reader calls the neck. */
  label: string;
  dots: readonly NeckDot[];
  /** The place sounding now. */
  lit?: Place | null;
  /** The places to be tapped, marked on the neck; where not given all may be, to hear them, and none is marked. */
  takes?: ((place: Place) => boolean) | undefined;
  tap?(place: Place): void;
  /** Whether it lies down; where not given, as the phone does. */
  lies?: boolean;
  /** Whether names stand beside their dots, as they do unless told otherwise. */
  beside?: boolean;
}

/**
 * The neck: nut at the top on a phone held upright, lying down when the phone does. What it stands in may scroll.
 * A grid for keyboard and screen reader; every place is a whole cell.
 */
export function Neck(props: NeckProps) {
  const { instrument, frets } = props;
  const phoneLies = useLying();
  const open = soundingPitches(instrument);
  const layout: Layout = {
    strings: open.length,
    frets,
    lying: props.lies ?? phoneLies,
    mirrored: isLeftHanded(instrument),
  };
  const { strings, lying, mirrored } = layout;
  const neck = useInSight(props);
  return (
    <div
      ref={neck}
      class={`neck ${lying ? 'lying' : 'upright'} ${mirrored ? 'mirrored' : ''}`}
      data-tuning={open.join(' ')}
      style={{ '--strings': String(strings), '--frets': String(frets[1] - frets[0] + 1) }}
    >
      <Lines {...layout} capo={instrument.capo} />
      <Margins {...props} layout={layout} open={open} />
      <Places {...props} layout={layout} />
    </div>
  );
}

/** Brings into sight what the neck is about, and then each note that sounds, where it is longer than what it stands in. */
function useInSight({ lit, takes }: NeckProps) {
  const neck = useRef<HTMLDivElement>(null);
  const bring = (places: string) => {
    for (const place of [...neck.current!.querySelectorAll(places)].toReversed())
      bringIntoSight(neck.current!.parentElement!, place);
  };
  useLayoutEffect(() => bring('[data-dot], .takes'), [!takes]);
  useLayoutEffect(() => bring('.lit'), [lit]);
  return neck;
}

interface MarginsProps extends NeckProps {
  layout: Layout;
  /** What the strings sound open, from the highest string number down. */
  open: readonly string[];
}

/** Names of strings and numbers of frets, at the neck's edges. */
function Margins({ layout, open, naming, musicKey, instrument }: MarginsProps) {
  const { strings, frets } = layout;
  const [low, high] = frets;
  return (
    <>
      {span(1, strings).map((string) => (
        <span
          key={`s${string}`}
          class="string-name"
          aria-hidden="true"
          style={cell(layout, { string, fret: low - 1 })}
        >
          {noteLabel(parsePitch(open[strings - string]!)!.name, absolute(naming), musicKey)}
        </span>
      ))}
      {span(Math.max(low, 1), high).map((fret) => (
        <span
          key={`f${fret}`}
          class={`fret-number ${hasInlay(fret, instrument.capo) ? 'inlaid' : ''}`}
          aria-hidden="true"
          style={cell(layout, { string: strings + 1, fret })}
        >
          {fret}
        </span>
      ))}
    </>
  );
}

/** The places in rows; arrow keys go from one to the next. */
function Places({ layout, ...props }: NeckProps & { layout: Layout }) {
  const { frets, label, dots } = props;
  const [low, high] = frets;
  const nearNut = { string: layout.strings, fret: low };
  const grid = useRef<HTMLDivElement>(null);
  // The keyboard begins where a dot is or a place may be tapped.
  const [at, setAt] = useState<Place>(
    () => dots[0] ?? (props.takes && rowsOf(layout).flat().find(props.takes)) ?? nearNut,
  );
  const inside = at.fret >= low && at.fret <= high ? at : nearNut;
  useEffect(() => {
    if (grid.current?.contains(document.activeElement)) {
      grid.current.querySelector<HTMLElement>('[tabindex="0"]')?.focus();
    }
  }, [at]);
  const move = (event: KeyboardEvent) => {
    const next = neighbour(event.key, inside, layout);
    if (!next) return;
    event.preventDefault();
    setAt(next);
  };
  return (
    <div
      class="places"
      role="grid"
      tabIndex={-1}
      aria-label={`${label}${dotsWords(dots)}`}
      ref={grid}
      onKeyDown={move}
    >
      {rowsOf(layout).map((row, index) => (
        <div role="row" key={index}>
          {row.map((place) => (
            <Cell
              key={`${place.string}/${place.fret}`}
              {...props}
              place={place}
              dot={dots.find((dot) => samePlace(dot, place))}
              focusable={samePlace(place, inside)}
              position={cell(layout, place)}
              focus={() => setAt(place)}
            />
          ))}
        </div>
      ))}
    </div>
  );
}

/** From so many dots on they are walked, not listed. */
const MANY = 12;

/** `. Dots: string 5, fret 3; string 4, fret 5`: so that nobody has to walk over all of the neck to find a shape. */
function dotsWords(dots: readonly NeckDot[]): string {
  if (dots.length === 0 || dots.length > MANY) return '';
  return `. Dots: ${dots.map(placeLabel).join('; ')}`;
}

const samePlace = (a: Place, b: Place) => a.string === b.string && a.fret === b.fret;

interface CellProps extends NeckProps {
  place: Place;
  dot: NeckDot | undefined;
  focusable: boolean;
  position: Record<string, string>;
  focus(): void;
}

function Cell(props: CellProps) {
  const { place, dot, lit, tap } = props;
  const takes = tap !== undefined && (props.takes?.(place) ?? true);
  const isLit = lit?.string === place.string && lit.fret === place.fret;
  const name = dot?.note && noteLabel(dot.note, props.naming, props.musicKey);
  return (
    <button
      type="button"
      role="gridcell"
      class={`cell ${takes && props.takes ? 'takes' : ''} ${isLit ? 'lit' : ''}`}
      aria-label={cellWords(place, dot, name)}
      aria-disabled={!takes}
      tabIndex={props.focusable ? 0 : -1}
      style={props.position}
      data-string={place.string}
      data-fret={place.fret}
      data-dot={dot ? '' : undefined}
      data-note={dot?.note}
      data-degree={dot?.degree}
      onFocus={props.focus}
      onClick={() => takes && tap(place)}
    >
      {dot && <Dot {...dot} />}
      {name && props.beside !== false && (
        <span class="dot-name" aria-hidden="true">
          {name}
        </span>
      )}
    </button>
  );
}

function Dot({ member, look, text, filled }: NeckDot) {
  return (
    <span class="dot-room" aria-hidden="true">
      <span
        class={`dot ${member ? `member-${member}` : ''} ${look ?? ''} ${(text?.length ?? 0) > 2 ? 'long' : ''} ${filled === undefined ? '' : 'pie'}`}
        style={filled === undefined ? undefined : { '--filled': String(filled) }}
      >
        {text ?? member ?? ''}
      </span>
    </span>
  );
}

/** What a screen reader says of a place. */
function cellWords(place: Place, dot: NeckDot | undefined, name: string | undefined): string {
  const words = [placeLabel(place)];
  const look = dot?.look;
  if (dot && look !== 'unbent') words.push(name || (look === 'wrong' ? 'foreign note' : 'dot'));
  if (dot?.said) words.push(dot.said);
  else if (dot?.member) words.push(MEMBER_NAMES[dot.member]);
  if (dot?.moved) words.push(dot.moved);
  return words.join(', ');
}
