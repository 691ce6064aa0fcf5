import { KINDS } from '../../cards/here.ts';
import { isHeard } from '../round/session.ts';
import { heardAgain, isSilent } from '../settings.ts';
import { changeSettings, itemsOfLesson, settings } from '../state.ts';

/** That nothing is asked which must be heard, where the phone does not sound it. */
export function Unheard({ deck }: { deck: string }) {
  const items = itemsOfLesson(deck);
  const unheard = items.filter(({ kind }) => KINDS[kind].needs.includes('sound')).length;
  if (isHeard() || unheard === 0) return null;
  const isMuted = isSilent(settings.value);
  return (
    <div class="notice" role="status">
      <p>
        {isMuted ? 'Sound is muted' : 'This phone does not let the page sound'}: {unheard} of{' '}
        {items.length} items must be heard, and are not asked until it sounds.
      </p>
      {isMuted && (
        <button
          type="button"
          class="button"
          onClick={() => changeSettings(heardAgain(settings.value))}
        >
          Turn sound on
        </button>
      )}
    </div>
  );
}
