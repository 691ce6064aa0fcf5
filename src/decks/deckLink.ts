/** How a lesson's link is made: what `link.ts` reads. */
import type { Deck } from './deck.ts';
import { readDeck, writeDeck } from './document.ts';
import type { DeckDocument } from './document.ts';
import { drillFormOf } from './drills/index.ts';
import { sealLink } from './seal.ts';
import { letterOf } from './kinds.ts';
import { foldMarks } from './marks.ts';
import { FIELD } from './letters.ts';
import { HAND_LETTERS, MARKS, RULED } from './link.ts';

/**
 * The link of a deck.
 *
 * @param base the page's address, up to `#`
 * @throws RangeError with a sentence where the deck holds what no student could open
 */
export async function deckLink(deck: Deck, base: string): Promise<string> {
  const document = writeDeck(deck);
  const read = readDeck(document);
  if ('fault' in read) throw new RangeError(read.fault);
  const letters = new TextEncoder().encode(fold(document));
  return sealLink('lesson', base, document.version, await deflate(letters));
}

function fold(document: DeckDocument): string {
  const { title, note, lessonDay, instrument, key, drills, phrases, marks = {} } = document;
  const fields = [
    title,
    note,
    lessonDay?.replaceAll('-', ''),
    key,
    instrument === 'guitar' ? '' : JSON.stringify(instrument),
    [...drills.map(foldDrill), ...foldMarks(marks)].join(' '),
    ...(phrases ?? []).map(({ tempo, notes, hand, outline = [] }) =>
      [tempo + foldHand(hand), ...notes.map(foldNote), ...outline.map(foldRuling)].join(' '),
    ),
  ];
  while (!fields.at(-1)) fields.pop();
  return fields.join(FIELD);
}

/** How a phrase lies, behind its tempo: `72m` movable, `72o` open strings, `72@5` at fret 5. */
function foldHand(hand: string | undefined): string {
  if (hand === undefined) return '';
  return HAND_LETTERS.find(([name]) => name === hand)?.[1] ?? hand.replace('at fret ', '@');
}

/** A drill as its kind's letter and what its form writes behind: `s01.54,43.2a`. */
function foldDrill(drill: DeckDocument['drills'][number]): string {
  return letterOf(drill.kind) + drillFormOf(drill.kind).fold(drill);
}

function foldNote(note: string): string {
  return MARKS.reduce((text, [word, mark]) => text.replace(word, mark), note);
}

function foldRuling(ruling: string): string {
  return RULED + ruling.replace(' ', '');
}

export async function deflate(text: Uint8Array<ArrayBuffer>): Promise<Uint8Array> {
  const stream = new Blob([text]).stream().pipeThrough(new CompressionStream('deflate-raw'));
  return new Uint8Array(await new Response(stream).arrayBuffer());
}
