import { replay } from '../../../src/memory/memory.ts';
import { nextCard } from '../../../src/practice/next.ts';
import { startRound } from '../../../src/practice/round.ts';
import { openLog } from '../../../src/store/log.ts';

/** What the browser's page of the log's tests has to work with. */
const page = { nextCard, openLog, replay, startRound };

declare global {
  interface Window {
    log: typeof page;
    /** Tells the test of an answer that is stored. */
    told(n: number): void;
  }
}

window.log = page;
