import { KINDS } from '../../cards/here.ts';
import { isHeard } from '../round/askable.ts';
import { heardAgain, isSilent } from '../settings.ts';
import { changeSettings, itemsOfLesson, settings } from '../state.ts';

/** How much of the lesson is asked without sound, where the phone does not sound: what must be heard waits. */
export function WithoutSound({ deck }: { deck: string }) {
  const items = itemsOfLesson(deck);
  const seen = items.filter(({ kind }) => !KINDS[kind].needs.includes('sound')).length;
  if (isHeard() || seen === items.length) return null;
  const isMuted = isSilent(settings.value);
  return (
    <div class="notice unheard" role="status">
      <p>
        <b>
          Without sound: {seen} of {items.length}.
        </b>{' '}
        {isMuted
          ? 'What must be heard waits until sound is on.'
          : 'This phone does not let the page sound: what must be heard waits until it does.'}
      </p>
      {isMuted && (
        <button
          type="button"
          class="button small"
          onClick={() => changeSettings(heardAgain(settings.value))}
        >
          Turn sound on
        </button>
      )}
    </div>
  );
}
