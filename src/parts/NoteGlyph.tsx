import type { Beats } from '../theory/rhythm.ts';
import { noteValue, valueWords } from '../theory/value.ts';
import './NoteGlyph.css';

/** A length as its note is written, a 3 over it for a triplet; as a fraction where no single note lasts so long. */
export function NoteGlyph({ length }: { length: Beats }) {
  const value = noteValue(length);
  if (!value) return <span class="note-glyph">{valueWords(length).replace(' beats', '')}</span>;
  const { flags, dotted, triplet } = value;
  return (
    <svg class="note-glyph" viewBox="0 0 16 22" aria-hidden="true">
      <ellipse
        class={flags < 0 ? 'hollow' : ''}
        cx="5.5"
        cy="18"
        rx="3.4"
        ry="2.5"
        transform="rotate(-18 5.5 18)"
      />
      {flags > -2 && <path d="M8.7 17.4V4" />}
      {Array.from({ length: Math.max(0, flags) }, (_, i) => (
        <path key={i} d={`M8.7 ${4 + i * 3.5}c0.4 3 4.6 3 3.4 7.4`} />
      ))}
      {dotted && <circle cx="11.6" cy="18" r="1.2" />}
      {triplet && (
        <text x="1" y="8.5">
          3
        </text>
      )}
    </svg>
  );
}
