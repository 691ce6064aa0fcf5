import { microphoneState } from '../../listening/index.ts';
import { listen } from './inHand.ts';

/** Where the phone does not hear the guitar: without it, or listening again. */
export function WaysOn({ without, isAsking }: { without(): void; isAsking: boolean }) {
  return (
    <>
      <button type="button" class="button" data-do="put-down" onClick={without}>
        Put the guitar down
      </button>
      {!isAsking && (
        <button type="button" class="button main" data-do="listen" onClick={listen}>
          {microphoneState.value === 'off' ? 'Let the phone listen' : 'Try again'}
        </button>
      )}
    </>
  );
}
