import { step, type Cursor, type Entry } from '../../../making/entry.ts';
import { withPlaces, type Explained } from '../../../making/explained.ts';
import { ruled, unruled } from '../../../making/ruled.ts';
import { fretsLeft, type Instrument } from '../../../neck/instrument.ts';
import { midiAt, placeLabel, placesOf, type Place } from '../../../neck/place.ts';
import { parsePlace, placeText } from '../../../neck/placeText.ts';
import { Choice, Choices } from '../../../parts/Choices.tsx';
import { possibleEmbellishments } from '../../../theory/analysis/analysis.ts';
import { EMBELLISHMENTS } from '../../../theory/analysis/embellishmentNames.ts';
import { isToneRuling } from '../../../theory/analysis/ruling.ts';
import {
  articulate,
  articulationFault,
  movedLater,
  move,
  rest,
  restAfter,
  unplace,
} from '../../../theory/editing.ts';
import { pitchClass } from '../../../theory/note.ts';
import { ARTICULATIONS, type Articulation } from '../../../theory/phrase.ts';
import { beats } from '../../../theory/rhythm.ts';
import { kindWords, toneWords, withArticle } from '../../phrases/phraseWords.ts';
import { Tool } from './Tool.tsx';

interface ChosenNoteProps {
  entry: Entry;
  explained: Explained;
  edit(change: (now: Entry) => Entry): void;
  go(cursor: Cursor): void;
}

/** What can be done with the note that the cursor is on. */
export function ChosenNote({ entry, explained, edit, go }: ChosenNoteProps) {
  const { at } = entry.cursor;
  const { notes } = entry.sketch;
  const hasRest = restAfter(entry.sketch, at).n > 0;
  return (
    <section class="chosen" aria-label={`Note ${at + 1}`}>
      <div class="row three">
        <Tool name="Earlier" disabled={at === 0} use={() => edit((now) => shifted(now, -1))} />
        <Tool
          name="Later"
          disabled={at + 1 === notes.length}
          use={() => edit((now) => shifted(now, 1))}
        />
        <Tool name="Insert before" use={() => go({ on: 'gap', at })} />
        <Tool name="Insert after" use={() => go({ on: 'gap', at: at + 1 })} />
        {hasRest && (
          <Tool
            name="Remove its rest"
            use={() => edit((now) => step(now, { sketch: rest(now.sketch, at, beats(0)) }))}
          />
        )}
        <Tool name="To the end" use={() => go({ on: 'gap', at: notes.length })} />
      </div>
      <ToneChoice {...{ entry, explained, edit }} />
      <ArticulationChoice {...{ entry, explained, edit }} />
      <PlaceChoice {...{ entry, edit }} instrument={explained.instrument} />
    </section>
  );
}

/** The cursor's note behind the next one, or before the one before it; the cursor goes with it. */
export function shifted(entry: Entry, by: 1 | -1): Entry {
  const { at } = entry.cursor;
  const sketch = movedLater(entry.sketch, by > 0 ? at : at - 1);
  if (sketch === entry.sketch) return entry;
  return step(entry, { sketch, cursor: { on: 'note', at: at + by } });
}

function ArticulationChoice({ entry, explained, edit }: Omit<ChosenNoteProps, 'go'>) {
  const { at } = entry.cursor;
  const { notes } = withPlaces(explained);
  const [before, note] = [notes[at - 1], notes[at]];
  if (!note) return null;
  const faults = ARTICULATIONS.map((how) => articulationFault(before, note, how));
  const set = (how: Articulation | null) =>
    edit((now) => step(now, { sketch: articulate(now.sketch, at, how) }));
  const told = [...new Set(before ? faults : faults.slice(0, 1))].filter((fault) => fault !== null);
  return (
    <>
      <Choices legend="Reached by">
        <Choice
          name="articulation"
          label="picking"
          checked={note.articulation === undefined}
          change={() => set(null)}
        />
        {ARTICULATIONS.map((how, i) => (
          <Choice
            key={how}
            name="articulation"
            label={how}
            checked={note.articulation === how}
            disabled={faults[i] !== null && note.articulation !== how}
            change={() => set(how)}
          />
        ))}
      </Choices>
      {told.length > 0 && <p class="soft">{told.join(' ')}</p>}
    </>
  );
}

/** What the note is in its arpeggio: as it was found, or as the teacher says. */
function ToneChoice({ entry, explained, edit }: Omit<ChosenNoteProps, 'go'>) {
  const { at } = entry.cursor;
  if (!explained.analysis.notes[at]) return null;
  const ruling = entry.rulings.find((one) => isToneRuling(one) && one.note === at);
  const said = ruling && isToneRuling(ruling) ? (ruling.embellishment ?? CHORDAL) : '';
  const rule = (tone: string) =>
    edit((now) => {
      const embellishment = EMBELLISHMENTS.find((kind) => kind === tone) ?? null;
      const rulings = tone
        ? ruled(now.rulings, { note: at, embellishment })
        : unruled(now.rulings, [at, at + 1], true);
      return step(now, { rulings });
    });
  return (
    <label class="reading">
      <span>
        It is {toneWords(explained, at)}
        {ruling && <span class="soft"> · as you say</span>}
      </span>
      <select value={said} onChange={(event) => rule(event.currentTarget.value)}>
        <option value="">as it was found</option>
        <option value={CHORDAL}>a note of its chord</option>
        {possibleEmbellishments(explained.phrase, explained.key, at).map((kind) => (
          <option key={kind} value={kind}>
            {withArticle(kindWords(kind))}
          </option>
        ))}
      </select>
    </label>
  );
}

const CHORDAL = 'chordal';

interface PlaceChoiceProps extends Pick<ChosenNoteProps, 'entry' | 'edit'> {
  instrument: Instrument;
}

function PlaceChoice({ entry, instrument, edit }: PlaceChoiceProps) {
  const { at } = entry.cursor;
  const note = entry.sketch.notes[at];
  if (!note) return null;
  const choose = (place: Place | null) =>
    edit((now) => {
      const { midi, name } = now.sketch.notes[at]!;
      const sketch = place ? move(now.sketch, at, { midi, name, place }) : unplace(now.sketch, at);
      return step(now, { sketch });
    });
  return (
    <label class="reading">
      <span>Played on</span>
      <select
        value={note.place ? placeText(note.place) : ''}
        onChange={(event) => choose(parsePlace(event.currentTarget.value))}
      >
        <option value="">wherever it is easiest</option>
        {placesSounding(instrument, note.midi).map((place) => (
          <option key={placeText(place)} value={placeText(place)}>
            {placeLabel(place)}
          </option>
        ))}
      </select>
    </label>
  );
}

function placesSounding(instrument: Instrument, midi: number): Place[] {
  const strings = instrument.tuning.map((_, i) => i + 1);
  const alike = placesOf(instrument, pitchClass(midi), strings, [0, fretsLeft(instrument)]);
  return alike.filter((place) => midiAt(instrument, place) === midi);
}
