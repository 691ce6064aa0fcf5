import { useMemo, useState } from 'preact/hooks';
import { degreeSteps } from '../../cards/arpeggio/degreeSteps.ts';
import { onNeck, type LyingItem } from '../../cards/onNeck.ts';
import type { Deck } from '../../decks/deck.ts';
import { midiAt } from '../../neck/place.ts';
import { BarChart } from '../../parts/BarChart.tsx';
import { Facts } from '../../parts/Facts.tsx';
import { Neck } from '../../parts/Neck.tsx';
import { Stair } from '../../parts/Stair.tsx';
import { isOfPhrase, type Item } from '../../practice/item.ts';
import { placesKnown, sharesBy, type KnownPlace } from '../../practice/shares.ts';
import { pluck } from '../../sound/index.ts';
import type { Key } from '../../theory/key.ts';
import { tomorrowOf } from '../tomorrow.ts';
import { percent } from '../figures.ts';
import { memory, settings, type Lesson } from '../state.ts';

/** What an item belongs to on the neck. A picture by each of these chooses what the neck shows. */
const PARTS = {
  degree: ({ degree }: LyingItem) => String(degree),
  strings: ({ strings }: LyingItem) => `strings ${strings.replaceAll('-', '–')}`,
  // Each arpeggio of a phrase has frets of its own: too many to choose from.
  frets: (item: LyingItem) => (isOfPhrase(item) ? 'in phrases' : `frets ${item.frets.join('–')}`),
};
type Part = keyof typeof PARTS;
type Chosen = Partial<Record<Part, string | null>>;

/** The neck as a map of recall: every place as full as the arpeggios that lie on it are known. */
export function KnownNeck(props: { lesson: Lesson; items: readonly Item[]; now: number }) {
  const { items } = props;
  const at = tomorrowOf(props.now);
  const { key, instrument } = props.lesson.deck;
  const [chosen, setChosen] = useState<Chosen>({});
  const all = useMemo(() => onNeck(items, instrument), [items, instrument]);
  const shown = all.filter((item) => isChosen(item, chosen));
  const places = useMemo(() => placesKnown(shown, memory.value.of, at), [all, chosen, at]);
  if (all.length === 0) return null;
  const press = (part: Part) => (name: string) =>
    setChosen({ ...chosen, [part]: chosen[part] === name ? null : name });
  // What a part chooses among is what the other parts leave.
  const shares = (part: Part) => {
    const left = all.filter((item) => isChosen(item, { ...chosen, [part]: null }));
    return sharesBy(left, PARTS[part], memory.value.of, at);
  };
  return (
    <section>
      <h2>Where you know it</h2>
      <p class="soft">
        {Object.values(chosen).some(Boolean)
          ? 'A place is as full as what you chose is known there tomorrow morning.'
          : 'A place is as full as you know it tomorrow morning. Choose a step, strings or frets; tap a place to hear it.'}
      </p>
      <DegreeFilter
        musicKey={key}
        shares={shares('degree')}
        choose={press('degree')}
        pressed={chosen.degree ?? null}
      />
      {(['strings', 'frets'] as const).map((part) => (
        <Filter
          key={part}
          part={part}
          shares={shares(part)}
          choose={press(part)}
          pressed={chosen[part] ?? null}
        />
      ))}
      <RecallMap deck={props.lesson.deck} items={all} places={places} />
      {places.length === 0 && <p>Nothing of it lies there.</p>}
      <NeckFacts places={places} strings={instrument.tuning.length} />
    </section>
  );
}

interface RecallMapProps {
  deck: Deck;
  /** All that lie on the neck: from the lowest of their frets to the highest it is drawn. */
  items: readonly LyingItem[];
  places: readonly KnownPlace[];
}

function RecallMap({ deck: { key, instrument }, items, places }: RecallMapProps) {
  return (
    <div class="scrolls" role="group" aria-label="The neck">
      <Neck
        instrument={instrument}
        musicKey={key}
        naming={settings.value.naming}
        frets={[
          Math.min(...items.map(({ frets }) => frets[0])),
          Math.max(...items.map(({ frets }) => frets[1])),
        ]}
        label="How well each place is known"
        dots={places.map(({ string, fret, recall, asked }) => ({
          string,
          fret,
          filled: recall,
          said: asked === 0 ? 'not asked yet' : `${Math.round(recall * 100)} percent known`,
        }))}
        beside={false}
        tap={(place) => pluck(midiAt(instrument, place), place.string)}
      />
    </div>
  );
}

interface DegreeFilterProps extends Omit<FilterProps, 'part'> {
  musicKey: Key;
}

/** What is known of each degree, as a staircase. */
function DegreeFilter({ musicKey, shares, choose, pressed }: DegreeFilterProps) {
  const steps = degreeSteps(musicKey, 'triad', { ...settings.value, chordNames: false });
  return (
    <Stair
      steps={steps.map((step) => ({
        ...step,
        filled: shares.get(String(step.degree))?.recall ?? 0,
      }))}
      label="What is known of each degree on the neck; choose one to see where"
      choose={(degree) => choose(String(degree))}
      pressed={pressed ? Number(pressed) : null}
    />
  );
}

function isChosen(item: LyingItem, chosen: Chosen): boolean {
  return (Object.keys(PARTS) as Part[]).every(
    (part) => chosen[part] == null || chosen[part] === PARTS[part](item),
  );
}

interface FilterProps {
  part: Part;
  shares: ReturnType<typeof sharesBy>;
  choose(name: string): void;
  pressed: string | null;
}

/** What is known of each string set or stretch of frets, where there is more than one. */
function Filter({ part, shares, choose, pressed }: FilterProps) {
  if (shares.size < 2 && pressed === null) return null;
  const bars = [...shares]
    .map(([name, { recall }]) => ({ name, filled: recall, figure: percent(recall) }))
    .toSorted((a, b) => order(part, a.name) - order(part, b.name));
  return (
    <BarChart
      bars={bars}
      label={`What is known by ${part === 'strings' ? 'string set' : 'stretch of frets'}`}
      choose={choose}
      pressed={pressed}
    />
  );
}

/** From the low strings to the high ones, from the nut upwards, and what is in phrases last. */
function order(part: Part, name: string): number {
  const [first = Infinity, second = 0] = name.match(/\d+/g)?.map(Number) ?? [];
  return part === 'strings' ? -(first * 100 + second) : first * 100 + second;
}

function NeckFacts({ places, strings }: { places: readonly KnownPlace[]; strings: number }) {
  const columns = Array.from({ length: strings }, (_, index) => strings - index);
  const frets = [...new Set(places.map(({ fret }) => fret))].toSorted((a, b) => a - b);
  const at = (string: number, fret: number) => {
    const place = places.find((one) => one.string === string && one.fret === fret);
    if (!place) return '';
    return place.asked === 0 ? 'not asked' : percent(place.recall);
  };
  return (
    <Facts
      caption="How well each place is known"
      head={['fret', ...columns.map((string) => `string ${string}`)]}
      rows={frets.map((fret) => [
        fret === 0 ? 'open' : String(fret),
        ...columns.map((string) => at(string, fret)),
      ])}
    />
  );
}
