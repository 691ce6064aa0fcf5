import type { Deck } from '../decks/deck.ts';
import { deckId, writeDeck } from '../decks/document.ts';
import * as decks from '../store/decksAway.ts';
import { lessonById, lessons, quarantined, reportingTrouble } from './state.ts';

/** Keeps a deck that was made here for someone else, put away: nothing changes in what is practised. Gives its id. */
export async function keepMade(deck: Deck): Promise<string> {
  const id = deckId(deck);
  if (lessonById(id)) return id;
  lessons.value = [...lessons.value, { id, deck, away: true }];
  await reportingTrouble(decks.keepAway(id, writeDeck(deck), Date.now()));
  return id;
}

/** Puts a deck out of sight, or takes it back. What was learned with it stays. */
export async function setAway(id: string, away: boolean): Promise<void> {
  lessons.value = lessons.value.map((lesson) => (lesson.id === id ? { ...lesson, away } : lesson));
  await reportingTrouble(away ? decks.putAway(id) : decks.takeBack(id));
}

/** Deletes a lesson from the device. Its answers stay, and count again should it come back. The caller has asked twice. */
export async function deleteLesson(id: string): Promise<void> {
  lessons.value = lessons.value.filter((lesson) => lesson.id !== id);
  quarantined.value = quarantined.value.filter((lesson) => lesson.id !== id);
  await reportingTrouble(decks.deleteDeck(id));
}
