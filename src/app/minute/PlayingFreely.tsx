import { ListeningMark } from '../guitar/ListeningMark.tsx';
import type { FreeNote } from '../../listening/index.ts';
import { keyLabel } from '../../theory/naming.ts';
import { useFocusOnTitle } from '../focus.ts';
import { counted } from '../figures.ts';
import { settings } from '../state.ts';
import { barsAt } from './backing.ts';
import { usePlayingFreely, type MinutePlan } from './usePlayingFreely.ts';

interface PlayingFreelyProps extends MinutePlan {
  over(heard: readonly FreeNote[] | null): void;
}

const BAR = 4;

/** The minute itself: nothing to read but how long it still is. */
export function PlayingFreely({ over, ...playing }: PlayingFreelyProps) {
  const title = useFocusOnTitle();
  const { beat, heard, finish } = usePlayingFreely(playing, over);
  const { deck, tempo } = playing;
  const isCounted = beat === null || beat < 0;
  const left = Math.max(0, Math.round(((barsAt(tempo) * BAR - (beat ?? 0)) * 60) / tempo));
  return (
    <main class="screen minute playing">
      <p class="label listens">
        {keyLabel(deck.key, settings.value.naming)} <ListeningMark />
      </p>
      <h1 ref={title} tabIndex={-1}>
        Play what you like
      </h1>
      <p class="beat-mark" aria-hidden="true" data-beat={beat ?? ''}>
        {isCounted ? (beat === null ? '' : beat + BAR + 1) : left}
      </p>
      <p class="soft">
        {isCounted ? 'One bar is counted in.' : `seconds left · ${counted(heard, 'pluck')} heard`}
      </p>
      {settings.value.muted && <p class="notice">Sound is off: the beat is only seen.</p>}
      <div class="last">
        <button type="button" class="button wide" data-do="finish" onClick={finish}>
          That is enough
        </button>
      </div>
    </main>
  );
}
