import { useEffect, useRef } from 'preact/hooks';
import './PhraseStrip.css';

/** A note of the strip. */
export interface StripNote {
  /** What stands under the strings: its degree. */
  readonly label: string;
  readonly string: number;
  readonly fret: number;
  /** Onset in beats. */
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
  /** A note was tapped. */
  choose(index: number): void;
}

/** A phrase as a strip of tablature, string 1 on top, beats ticked above and degrees below. */
export function PhraseStrip({ notes, strings, lit, stretch, choose }: PhraseStripProps) {
  const strip = useRef<HTMLOListElement>(null);
  useEffect(() => {
    if (lit === null) return;
    strip.current?.children[lit]?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }, [lit]);
  return (
    <ol class="strip" ref={strip} style={{ '--strings': String(strings) }}>
      {notes.map(({ label, string, fret, at }, index) => {
        const inside = stretch !== null && index >= stretch[0] && index <= stretch[1];
        const words = `Note ${index + 1}: degree ${label}, string ${string}, ${fret === 0 ? 'open' : `fret ${fret}`}`;
        return (
          <li key={index} class={Number.isInteger(at) ? 'on-beat' : ''}>
            <button
              type="button"
              class={lit === index ? 'sounding' : ''}
              aria-label={words}
              aria-pressed={inside}
              onClick={() => choose(index)}
            >
              <span class="tab" aria-hidden="true">
                <span class="fret" style={{ gridRow: String(string) }}>
                  {fret}
                </span>
              </span>
              <span class="degree" aria-hidden="true">
                {label}
              </span>
            </button>
          </li>
        );
      })}
    </ol>
  );
}
