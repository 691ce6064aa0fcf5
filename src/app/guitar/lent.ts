/** How the guitar is lent to cards: what is known of its tuning and of the phone's delay is put in here. */
import type { FreeListener, Task } from '../../listening/index.ts';
import { follow, hearFreely, hearStrikes } from '../../listening/tasks.ts';
import { heardAt } from '../../sound/heardAt.ts';
import { audioContext } from '../../sound/index.ts';
import { settings } from '../state.ts';
import type { Lent } from './guitar.ts';
import { offset } from './inHand.ts';
import { delayed, undelayed, undelayedLine } from './late.ts';
import { canSpeak, speak, spokenWords } from './spoken.ts';

/** The guitar as cards are lent it. */
export const LENT: Lent = {
  follow(expected, follower) {
    const { reference } = settings.value;
    const delay = settings.value.guitar.delay ?? 0;
    const known = { ...delayed(expected, delay), offset: offset.value ?? 0, reference };
    return follow(known, undelayed(follower, delay));
  },
  now: () => audioContext()?.currentTime ?? 0,
  strikes(onStrike) {
    const delay = settings.value.guitar.delay ?? 0;
    return hearStrikes((time) => {
      const context = audioContext();
      if (context) onStrike(heardAt(context, time - delay));
    });
  },
  get isMeasured() {
    return settings.value.guitar.delay !== null;
  },
  get say() {
    return settings.value.guitar.spoken && canSpeak() ? speak : null;
  },
  ask: (question) => speak(spokenWords(question)),
  get byItself() {
    return settings.value.guitar.byItself;
  },
};

/** Hears a line of which nothing is asked, on a guitar that is ready; it is told when the notes were played. */
export function hearLine(listener: FreeListener): Task {
  const { reference, guitar: known } = settings.value;
  const playing = { offset: offset.value ?? 0, reference };
  return hearFreely(playing, undelayedLine(listener, known.delay ?? 0));
}
