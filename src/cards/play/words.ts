import { isPhraseDrill, type DrillOf, type Way } from '../../decks/deck.ts';
import { listed } from '../../parts/english.ts';
import { numeralLabel } from '../../theory/naming.ts';
import { drillWords, itemWords as onStrings } from '../arpeggio/words.ts';
import { fromPlace, phrasesWords } from '../excerpt/words.ts';
import type { KindWords } from '../kind.ts';
import type { PlayItem } from './items.ts';

export const WAY_WORDS: Readonly<Record<Way, string>> = {
  up: 'up',
  down: 'down',
  turn: 'up and back',
};

const atTempo = (tempo: number | null | undefined) => (tempo ? ` at ${tempo}` : '');

/** How fast it goes, as a question says it: ` · two notes a beat at 72`; of a phrase the rhythm is its own; empty at leisure. */
export function tempoHint({ excerpt, tempo }: PlayItem): string {
  if (tempo === null) return '';
  return excerpt ? ` · at ${tempo}` : ` · two notes a beat at ${tempo}`;
}

function drillOf(drill: DrillOf<'play'>): string {
  if (isPhraseDrill(drill)) {
    return `play the arpeggios of ${phrasesWords(drill)}${atTempo(drill.tempo)}`;
  }
  const ways = listed(drill.ways.map((way) => WAY_WORDS[way]));
  return `play ${ways} ${drillWords(drill)}${atTempo(drill.tempo)}`;
}

function itemWords(item: PlayItem): string {
  const { chord, excerpt, way, tempo } = item;
  if (excerpt) return `${numeralLabel(chord)} as the phrase has it${atTempo(tempo)}`;
  return `${onStrings(item)} ${WAY_WORDS[way!]}${atTempo(tempo)}`;
}

export const words: KindWords<PlayItem> = {
  drills: 'play what is shown',
  card: 'play what is shown',
  brief: 'play',
  none: 'nothing of it lies whole on these strings inside these frets',
  soon: 'soon you are asked to play it on the guitar.',
  taken: null,
  drill: drillOf,
  item: itemWords,
  itemPlace(item) {
    if (!item.excerpt) return `play ${itemWords(item)}, frets ${item.frets.join(' to ')}`;
    return `play ${itemWords(item)}${fromPlace({ ...item, excerpt: item.excerpt })}`;
  },
};
