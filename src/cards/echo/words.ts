import { isPhraseDrill } from '../../decks/deck.ts';
import { listed } from '../../parts/english.ts';
import { numeralLabel } from '../../theory/naming.ts';
import { chordOn } from '../../theory/chord.ts';
import { sizesWords } from '../arpeggio/words.ts';
import { fromPlace, phrasesWords } from '../excerpt/words.ts';
import type { KindWords } from '../kind.ts';
import type { EchoItem } from './items.ts';

function itemWords({ key, degree, size, excerpt, tempo }: EchoItem): string {
  const chord = excerpt?.groups[0]!.chord ?? chordOn(key, degree, size);
  const where = excerpt ? ' in a phrase' : '';
  return `${numeralLabel(chord)} played back${where} at ${tempo}`;
}

export const words: KindWords<EchoItem> = {
  drills: 'play back what is heard',
  card: 'play back what is heard',
  brief: 'play back',
  none: 'nothing is short enough to be played back',
  soon: 'soon you hear it, and play it back on the guitar.',
  taken: null,
  drill(drill) {
    if (isPhraseDrill(drill)) return `play back the arpeggios of ${phrasesWords(drill)}`;
    const contours = listed([...drill.contours]);
    return `play back lines of ${sizesWords(drill.sizes)}, ${contours}, at ${drill.tempo}`;
  },
  item: itemWords,
  itemPlace(item) {
    const { drawn, excerpt } = item;
    if (excerpt) return itemWords(item) + fromPlace({ ...item, excerpt });
    const eighths = drawn!.rhythm === 'eighths' ? ' in eighths' : '';
    return `${itemWords(item)}, ${drawn!.contour}${eighths}`;
  },
};
