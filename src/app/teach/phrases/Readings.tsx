import type { Explained } from '../../../making/explained.ts';
import { likeliestOther, otherReadings } from '../../../making/otherReadings.ts';
import { endedAt, ruled, ruledGroup, splitAt, unruled } from '../../../making/ruled.ts';
import { Choice, Choices } from '../../../parts/Choices.tsx';
import { SURE_READING, type Group, type ReadGroup } from '../../../theory/analysis/analysis.ts';
import type { Ruling } from '../../../theory/analysis/ruling.ts';
import { chordOn, type Chord, type Size } from '../../../theory/chord.ts';
import type { Key } from '../../../theory/key.ts';
import { DEGREES, parentKey } from '../../../theory/scale.ts';
import { percent } from '../../figures.ts';
import { chordWords, notesWords, readingWords } from '../../phrases/phraseWords.ts';
import { settings } from '../../state.ts';

interface ReadingsProps {
  explained: Explained;
  rulings: readonly Ruling[];
  rule(rulings: readonly Ruling[]): void;
}

const SIZES: readonly Size[] = ['triad', 'seventh', 'ninth', 'eleventh'];

/** Which notes are a group, what each outlines and how sure that is; the teacher has the last word. */
export function Readings({ explained, rulings, rule }: ReadingsProps) {
  const { groups } = explained.analysis;
  return (
    <section class="readings">
      <h2>What it outlines</h2>
      <ul>
        {groups.map(({ from }, at) => (
          <li key={from}>
            <Reading {...{ groups, at, rulings, rule }} musicKey={explained.key} />
          </li>
        ))}
      </ul>
    </section>
  );
}

interface ReadingProps extends Omit<ReadingsProps, 'explained'> {
  groups: readonly Group[];
  at: number;
  musicKey: Key;
}

function Reading(props: ReadingProps) {
  const { groups, at, rulings, rule, musicKey } = props;
  const group = groups[at]!;
  const { from, to, chord, confidence, alternatives, regrouped } = group;
  const ruling = ruledGroup(rulings, group);
  const notes = titleWords(group);
  const span = [from, to] as const;
  const decide = (wanted: Chord | undefined) =>
    rule(wanted ? ruled(rulings, { span, chord: wanted }) : unruled(rulings, span));
  const found = [chord, ...alternatives.map((other) => other.chord)];
  const all = [...found, ...chordsOf(musicKey)].filter(
    (one, index, list) => list.findIndex(({ symbol }) => symbol === one.symbol) === index,
  );
  return (
    <section class="reading-of" aria-label={notes}>
      <label class="reading">
        <span>
          {notes} <span class="soft">· {sureWords(groups, at, ruling)}</span>
        </span>
        <select
          class="music"
          value={chord.symbol}
          onChange={(event) => {
            const { value } = event.currentTarget;
            const other = regrouped.find((one) => regroupedValue(one) === value);
            if (other) rule(ruled(rulings, { span: [other.from, other.to], chord: other.chord }));
            else decide(all.find(({ symbol }) => symbol === value));
          }}
        >
          {all.map((one) => (
            <option key={one.symbol} value={one.symbol}>
              {chordWords(one, settings.value)}
            </option>
          ))}
          {ruling && <option value="">as it was found</option>}
          {regrouped.length > 0 && <Regrouped of={regrouped} />}
        </select>
      </label>
      <Boundaries {...{ group, rulings, rule }} next={groups[at + 1] ?? null} />
      {!ruling?.chord && confidence < SURE_READING && <Question {...props} />}
    </section>
  );
}

/** Arpeggios of other notes, to choose instead. */
function Regrouped({ of }: { readonly of: readonly ReadGroup[] }) {
  return (
    <optgroup label="or of other notes">
      {of.map((other) => (
        <option key={regroupedValue(other)} value={regroupedValue(other)}>
          {readingWords(
            { ...other, joins: 'other notes', span: [other.from, other.to] },
            settings.value,
          )}
        </option>
      ))}
    </optgroup>
  );
}

const regroupedValue = ({ from, to, chord }: ReadGroup) => `${from}-${to} ${chord.symbol}`;

/** What a group may outline, alone or with the one next to it, where that is not sure. */
function Question({ groups, at, rulings, rule }: ReadingProps) {
  const group = groups[at]!;
  const others = otherReadings(groups, at);
  if (others.length === 0) return null;
  const said = settings.value;
  const own = { chord: group.chord, joins: null, span: [group.from, group.to] as const };
  const found = [own, ...others];
  const words = found.map((reading) => readingWords(reading, said));
  return (
    <Choices legend={`${titleWords(group)}: ${words.join(', or ')}?`}>
      {found.map(({ chord, span }, i) => (
        <Choice
          key={words[i]}
          music
          name={`reading ${group.from}`}
          label={words[i]!}
          checked={false}
          change={() => rule(ruled(rulings, { span, chord }))}
        />
      ))}
    </Choices>
  );
}

interface BoundariesProps extends Omit<ReadingsProps, 'explained'> {
  group: Group;
  next: Group | null;
}

/** Where a group ends, and where another begins inside it. */
function Boundaries({ group, next, rulings, rule }: BoundariesProps) {
  const { from, to } = group;
  if (!next && to - from === 1) return null;
  return (
    <div class="boundaries">
      {next && (
        <label>
          ends with note{' '}
          <select
            value={to}
            onChange={(event) =>
              rule(endedAt(rulings, group, next, Number(event.currentTarget.value)))
            }
          >
            {span(from + 1, next.to).map((end) => (
              <option key={end} value={end}>
                {end === next.to ? `${end}: ${joinedWords(group)}` : end}
              </option>
            ))}
          </select>
        </label>
      )}
      {to - from > 1 && (
        <form
          onSubmit={(event) => {
            event.preventDefault();
            const at = Number(new FormData(event.currentTarget).get('at'));
            rule(splitAt(rulings, group, at));
          }}
        >
          <label>
            another group begins at{' '}
            <select name="at">
              {span(from + 1, to - 1).map((at) => (
                <option key={at} value={at}>
                  note {at + 1}
                </option>
              ))}
            </select>
          </label>{' '}
          <button type="submit" class="button">
            Cut
          </button>
        </form>
      )}
    </div>
  );
}

/** `joined to the next, V9`: what both outline as one group. */
function joinedWords({ joined }: Group): string {
  return `joined to the next${joined ? `, ${chordWords(joined.chord, settings.value)}` : ''}`;
}

const span = (from: number, to: number) =>
  Array.from({ length: to - from + 1 }, (_, i) => from + i);

/** `Notes 1 to 6`. */
function titleWords({ from, to }: Group): string {
  const words = notesWords([from, to]);
  return words[0]!.toUpperCase() + words.slice(1);
}

/** `93 % sure`, and what else it could be where that is no idle thought. */
function sureWords(groups: readonly Group[], at: number, ruling: Ruling | undefined): string {
  if (ruling?.chord) return 'as you say';
  const { confidence } = groups[at]!;
  const sure = `${ruling ? 'grouped as you say, ' : ''}${percent(confidence)} sure`;
  const other = likeliestOther(groups, at);
  if (!other || confidence < SURE_READING) return sure;
  return `${sure}, else ${readingWords(other, settings.value)}`;
}

/** Every chord that a group may be said to outline. */
function chordsOf(key: Key): Chord[] {
  const own = parentKey(key);
  return SIZES.flatMap((size) => DEGREES.map((degree) => chordOn(own, degree, size)));
}
