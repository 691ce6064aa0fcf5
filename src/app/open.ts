import { restore } from './round/session.ts';
import { restoreQuestions } from './round/questions.ts';
import { open } from './state.ts';

// Read once: the log, the lessons, the settings; then the round that was going on when the page was left.
void open().then(() => Promise.all([restore(), restoreQuestions()]));
