import { isPhraseDrill, isPhraseKind, type Drill, type PhraseKind } from '../decks/deck.ts';
import { INSTRUMENTS, tuningText, type Instrument } from '../neck/instrument.ts';
import { placeLabel } from '../neck/place.ts';
import { listed } from '../cards/arpeggio.ts';
import type { ExcerptItem } from '../cards/excerptItems.ts';
import type { Item } from '../practice/item.ts';
import { chordOn, type Size } from '../theory/chord.ts';
import { parseKey } from '../theory/key.ts';
import { numeralLabel } from '../theory/naming.ts';

/** `guitar, capo on fret 3`, `own tuning (D2 G2 D3 G3 B3 E4), left-handed`. */
export function instrumentWords(instrument: Instrument): string {
  const { name, capo, leftHanded } = instrument;
  const isListed = INSTRUMENTS.some((one) => tuningText(one) === tuningText(instrument));
  const tuning = tuningText(instrument).replaceAll('#', '♯').replaceAll('b', '♭');
  return [
    isListed ? name : `${name} (${tuning})`,
    ...(capo > 0 ? [`capo on fret ${capo}`] : []),
    ...(leftHanded ? ['left-handed'] : []),
  ].join(', ');
}

const PHRASE_WORDS: Record<PhraseKind, string> = {
  outline: 'name the arpeggios of',
  follow: 'place each next arpeggio of',
  order: 'hear the order of the arpeggios of',
  vary: 'hear variations of',
  fill: 'hear which note is missing from',
};

/** `triads and sevenths on strings 5–4 and 4–3, frets 1 to 8`: what a drill asks, for the student. */
export function drillWords(drill: Drill): string {
  if (isPhraseDrill(drill)) {
    const [first, ...more] = drill.phrases ?? [];
    const which =
      more.length > 0 ? `phrases ${listed(drill.phrases!.map(String))}` : `phrase ${first}`;
    return `${PHRASE_WORDS[drill.kind]} ${first === undefined ? 'the phrases' : which}`;
  }
  const sizes = listed(drill.sizes.map((size) => `${size}s`));
  if (drill.kind === 'trace') return `hear ${sizes} and find their paths`;
  const strings = listed(drill.strings.map((set) => set.join('–')));
  const verb = drill.kind === 'spot' ? 'name' : 'place';
  return `${verb} ${sizes} on strings ${strings}, frets ${drill.frets[0]} to ${drill.frets[1]}`;
}

/** `vii° on strings 3–2`, `V by ear`: an item in a few words. Every id begins kind, key, degree, size. */
export function itemWords(item: Item): string {
  if (isPhraseItem(item)) return phraseItemWords(item);
  const [, key, , size] = item.id.split(':');
  const numeral = numeralLabel(chordOn(parseKey(key!)!, item.degree, size as Size));
  return item.strings
    ? `${numeral} on strings ${item.strings.replaceAll('-', '–')}`
    : `${numeral} by ear`;
}

/** `name vii° on strings 3–2, frets 1 to 7`, `V by ear, turn`: enough words to tell an item from its neighbours. */
export function itemPlace(item: Item): string {
  if (isPhraseItem(item)) {
    return `${phraseItemWords(item)}, from ${placeLabel(item.excerpt.notes[0]!.place)}`;
  }
  const parts = item.id.split(':');
  if (!item.strings) return `${itemWords(item)}, ${parts[5]}`;
  const verb = item.kind === 'spot' ? 'name' : 'place';
  return `${verb} ${itemWords(item)}, frets ${parts[6]!.replace('-', ' to ')}`;
}

function isPhraseItem(item: Item): item is ExcerptItem {
  return isPhraseKind(item.kind);
}

/** `ii7 in a phrase`, `V7 after ii7`, `the order from ii7 on`, `a variation from ii7 on`, `a 7 missing from ii7 on`. */
function phraseItemWords({ id, kind, degree, excerpt }: ExcerptItem): string {
  const first = numeralLabel(excerpt.groups[0]!.chord);
  if (kind === 'outline') return `${first} in a phrase`;
  if (kind === 'follow') return `${/(\S+) on /.exec(id)![1]} after ${first}`;
  if (kind === 'order') return `the order from ${first} on`;
  return kind === 'vary' ? `a variation from ${first} on` : `a ${degree} missing from ${first} on`;
}
