import { useAfterAWhile } from '../../parts/useAfterAWhile.ts';
import type { FaceProps } from '../kind.ts';
import type { Follow } from './usePlaying.ts';

interface PlayingFootProps extends Pick<FaceProps, 'guitar' | 'unheard'> {
  follow: Follow;
  /** What beginning again does: `Begin again`, `Count in again`. */
  again: string;
}

/** What the card does now, and a way to begin again; where it could not be told twice, to leave it. */
export function PlayingFoot({ follow, again, guitar, unheard }: PlayingFootProps) {
  if (!guitar)
    return <p class="soft">This card listens to the guitar in your hand. Here it only shows.</p>;
  if (follow.state === 'untold')
    return <Untold again={follow.again} byItself={guitar.byItself} unheard={unheard} />;
  return (
    <div class="buttons">
      <p class="soft" aria-live="polite">
        {wordsOf(follow)}
      </p>
      {follow.state !== 'answered' && follow.state !== 'waiting' && (
        <button type="button" class="button" onClick={follow.again}>
          {again}
        </button>
      )}
      {follow.state === 'listening' && follow.told !== null && <LeaveIt unheard={unheard} />}
    </div>
  );
}

/** How long is waited for a tap, in ms. */
const LEAVING = 12_000;

interface UntoldProps extends Pick<FaceProps, 'unheard'> {
  again(): void;
  byItself: boolean;
}

/** What is left where it could not be told twice: to try again, or to leave it; which comes by itself after a while. */
function Untold({ again, byItself, unheard }: UntoldProps) {
  const leaves = useAfterAWhile(byItself ? LEAVING : null, unheard);
  return (
    <div class="buttons">
      <p aria-live="polite" data-verdict="unheard">
        It could not be heard for sure. Nothing is counted.
        {leaves && ' It goes on by itself: tap to stay.'}
      </p>
      <button type="button" class="button" onClick={again}>
        Again
      </button>
      <LeaveIt unheard={unheard} />
    </div>
  );
}

/** Goes on without an answer. */
function LeaveIt({ unheard }: Pick<FaceProps, 'unheard'>) {
  return (
    <button type="button" class="button" data-do="leave" onClick={unheard}>
      Leave it
    </button>
  );
}

function wordsOf({ state, told }: Follow): string {
  if (state === 'counting') return 'After the count.';
  if (state !== 'listening') return '';
  if (told === 'in part') return 'Not heard for sure. Play it once more.';
  return told === 'nothing'
    ? 'Listening. Nothing was heard for sure yet.'
    : 'Listening. Play when you like.';
}
