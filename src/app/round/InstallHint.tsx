import { useEffect, useState } from 'preact/hooks';
import { install } from '../install.ts';
import { changeSettings, settings } from '../state.ts';

/** Rounds after which somebody may want the page at hand. */
const ROUNDS = 2;

/** The round that was counted last, by when it began: its end may be come back to. */
let counted = 0;

/** Counts a round that has come to its end, as far as is needed. */
export function countRound(started: number): void {
  const { once } = settings.value;
  if (started === counted || once.rounds >= ROUNDS) return;
  counted = started;
  changeSettings({ once: { ...once, rounds: once.rounds + 1 } });
}

/** Where the platform offers to put the page on the home screen: that it can be, once. */
export function InstallHint() {
  const { once } = settings.value;
  const offer = install.value;
  const isDue = offer !== null && once.rounds >= ROUNDS && !once.install;
  const [isTold, setTold] = useState(false);
  useEffect(() => {
    if (!isDue) return;
    setTold(true);
    changeSettings({ once: { ...once, install: true } });
  }, [isDue]);
  if (!isTold || offer === null) return null;
  const put = () => {
    // The browser asks with it one time only.
    install.value = null;
    void offer.prompt();
  };
  return (
    <section class="sheet" aria-label="On your home screen">
      <p>Put Skipwise on your home screen, and it opens with one tap, with the net or without.</p>
      <div class="buttons">
        <button type="button" class="button small" onClick={put}>
          Put it there
        </button>
        <button type="button" class="button small" onClick={() => setTold(false)}>
          Not now
        </button>
      </div>
    </section>
  );
}
