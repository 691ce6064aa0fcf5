import { restoreQuestions } from '../round/questions.ts';
import { restore } from '../round/session.ts';
import { open, opened } from '../state.ts';
import { stayAwake } from './awake.ts';
import { tellKeptOffline } from './offline.ts';

// Read once: the log, the lessons, the settings; then the round that was going on when the page was left. Only then
// is everything known: a round that is reloaded goes on where it was.
export const begun = open()
  .then(() => Promise.all([restore(), restoreQuestions()]))
  .then(() => {
    opened.value = true;
    tellKeptOffline();
  });

stayAwake();
