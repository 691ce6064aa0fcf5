import { restoreQuestions } from '../round/questions.ts';
import { restore } from '../round/session.ts';
import { currentDeck } from '../../store/decks.ts';
import { route } from '../router.ts';
import { lessons, log, open, opened } from '../state.ts';

// Read once: the log, the lessons, the settings; then the round that was going on when the page was left. Only then
// is everything known: a round that is reloaded goes on where it was.
export const begun = open()
  .then(() => Promise.all([restore(), restoreQuestions()]))
  .then(() => {
    opened.value = true;
    if (log.value?.trouble?.why === 'silent') lookAgain();
  });

/** How long a device that did not answer is left alone, ms. */
const REST = 11_000;

/** A device that was only slow: what it has is shown once it answers, where nothing was begun without it. */
function lookAgain(): void {
  setTimeout(() => {
    if (lessons.value.length > 0) return;
    if (route.value.screen !== 'today') return lookAgain();
    currentDeck().then(() => location.reload(), lookAgain);
  }, REST);
}
