import { useEffect, useRef } from 'preact/hooks';
import type { Articulation } from '../theory/phrase.ts';
import { toNumber, type Beats } from '../theory/rhythm.ts';
import { valueWords } from '../theory/value.ts';
import { bringIntoSight } from './inSight.ts';
import { NoteGlyph } from './NoteGlyph.tsx';
import './PhraseStrip.css';

/** A note of the strip. */
export interface StripNote {
  /** What stands under the strings: its degree. */
  readonly label: string;
  readonly string: number;
  readonly fret: number;
  /** Onset in beats. */
  readonly at: number;
  /** Drawn as a note over the strings where it is given. */
  readonly length?: Beats;
  /** How it is reached from the one before it. */
  readonly articulation?: Articulation;
}

/** Where the next note goes, or which one is changed. */
interface StripCursor {
  /** On a note, or in the gap before it. */
  readonly on: 'note' | 'gap';
  /** The note's index; their number is the gap at the end. */
  readonly at: number;
}

interface PhraseStripProps {
  notes: readonly StripNote[];
  /** How many strings the instrument has. */
  strings: number;
  /** The note heard now. */
  lit: number | null;
  /** First and last note of the chosen stretch. */
  stretch: readonly [number, number] | null;
  /** A note was tapped. With a cursor, their number stands for the gap at the end. */
  choose(index: number): void;
  /** Where the phrase is written on: then the strip is one stop for the Tab key. */
  cursor?: StripCursor;
}

/** Beats from bar line to bar line. */
const BAR = 4;

/** From where to where in beats something of the strip lasts. */
type Lasts = readonly [from: number, to: number];

const ARTICULATION_MARKS: Readonly<Record<Articulation, string>> = {
  slide: '/',
  'hammer-on': 'h',
  'pull-off': 'p',
};

/**
 * A phrase as a strip of tablature, string 1 on top: beats counted and lengths as notes above, degrees below. What lasts
 * longer is wider.
 */
export function PhraseStrip(props: PhraseStripProps) {
  const { notes, strings, lit, stretch, choose, cursor } = props;
  const strip = useRef<HTMLOListElement>(null);
  const cellOf = (selector: string) => strip.current?.querySelector<HTMLElement>(selector);
  useEffect(() => {
    const litCell = lit === null ? null : cellOf(`[data-index="${lit}"]`);
    if (litCell) bringIntoSight(strip.current!, litCell);
  }, [lit]);
  useEffect(() => {
    const here = cursor && cellOf('[aria-pressed="true"]');
    if (!here) return;
    bringIntoSight(strip.current!, here);
    if (strip.current!.contains(document.activeElement)) here.focus({ preventScroll: true });
  }, [cursor?.on, cursor?.at, notes.length]);
  const gap = (index: number) => (
    <Gap
      key={`gap ${index}`}
      end={index === notes.length}
      number={index + 1}
      here={cursor?.on === 'gap' && cursor.at === index}
      choose={() => index === notes.length && choose(index)}
    />
  );
  return (
    <ol class="strip" ref={strip} style={{ '--strings': String(strings) }}>
      {notes[0] && notes[0].at > 0 && <Rest key="lead" lasts={[0, notes[0].at]} />}
      {notes.map((note, index) => {
        const { at, length } = note;
        const next = notes[index + 1]?.at ?? at + (length ? toNumber(length) : 1);
        const end = length ? Math.min(next, at + toNumber(length)) : next;
        const here = cursor?.on === 'note' && cursor.at === index;
        return [
          cursor?.on === 'gap' && cursor.at === index && gap(index),
          <NoteCell
            key={index}
            {...{ note, index, choose }}
            lasts={[at, end]}
            isLit={lit === index}
            chosen={cursor ? here : stretch !== null && index >= stretch[0] && index <= stretch[1]}
            stop={!cursor || here}
          />,
          next - end > 1e-6 && <Rest key={`rest ${index}`} lasts={[end, next]} />,
        ];
      })}
      {cursor && gap(notes.length)}
    </ol>
  );
}

interface NoteCellProps {
  note: StripNote;
  index: number;
  lasts: Lasts;
  isLit: boolean;
  chosen: boolean;
  /** Whether the Tab key stops here. */
  stop: boolean;
  choose(index: number): void;
}

function NoteCell({ note, index, lasts, isLit, chosen, stop, choose }: NoteCellProps) {
  const { label, string, fret, length, articulation } = note;
  const words = [
    `Note ${index + 1}: degree ${label}`,
    `string ${string}`,
    fret === 0 ? 'open' : `fret ${fret}`,
    ...(length ? [valueWords(length)] : []),
    ...(articulation ? [`by ${articulation}`] : []),
  ];
  return (
    <li class={beatClass(lasts)} style={widthOf(lasts)}>
      <Ruler lasts={lasts} />
      <button
        type="button"
        class={isLit ? 'sounding' : ''}
        data-index={index}
        aria-label={words.join(', ')}
        aria-pressed={chosen}
        tabIndex={stop ? 0 : -1}
        onClick={() => choose(index)}
      >
        <span class="length" aria-hidden="true">
          {length && <NoteGlyph length={length} />}
        </span>
        <span class="tab" aria-hidden="true">
          <span class="fret" style={{ gridRow: String(string) }}>
            {articulation && <span class="articulation">{ARTICULATION_MARKS[articulation]}</span>}
            {fret}
          </span>
        </span>
        <span class="degree" aria-hidden="true">
          {label}
        </span>
      </button>
    </li>
  );
}

function Rest({ lasts }: { lasts: Lasts }) {
  return (
    <li class={`rest ${beatClass(lasts)}`} style={widthOf(lasts)}>
      <Ruler lasts={lasts} />
      <span class="length" />
      <span class="tab" />
      <span class="degree">rest</span>
    </li>
  );
}

interface GapProps {
  end: boolean;
  /** Of the note that would be written here. */
  number: number;
  here: boolean;
  choose(): void;
}

function Gap({ end, number, here, choose }: GapProps) {
  return (
    <li class="gap">
      <button
        type="button"
        aria-label={end ? 'At the end' : `Before note ${number}`}
        aria-pressed={here}
        tabIndex={here ? 0 : -1}
        onClick={choose}
      >
        <span class="tab" aria-hidden="true" />
        <span class="degree" aria-hidden="true">
          +
        </span>
      </button>
    </li>
  );
}

/** The beats that fall into a cell, counted within their bar. */
function Ruler({ lasts: [from, to] }: { lasts: Lasts }) {
  const first = Math.ceil(from - 1e-6);
  const beats = Array.from(
    { length: Math.max(0, Math.ceil(to - 1e-6) - first) },
    (_, i) => first + i,
  );
  return (
    <span class="ruler" aria-hidden="true">
      {beats.map((beat) => (
        <span key={beat} style={{ left: `${(100 * (beat - from)) / (to - from)}%` }}>
          {(beat % BAR) + 1}
        </span>
      ))}
    </span>
  );
}

function beatClass([from]: Lasts): string {
  if (Math.abs(from - Math.round(from)) > 1e-6) return '';
  return from > 0 && Math.round(from) % BAR === 0 ? 'on-beat on-bar' : 'on-beat';
}

/** A quarter is wider than a triplet, but not three times: all of a phrase shall be seen. */
function widthOf([from, to]: Lasts) {
  return { '--wide': String(Math.min(3, Math.max(1, Math.sqrt(2 * (to - from)))).toFixed(2)) };
}
