import { wantsGuitar } from '../../cards/here.ts';
import type { Item } from '../../practice/item.ts';
import { settings } from '../state.ts';
import { changeGuitar, isPlayable } from './inHand.ts';
import './Guitar.css';

/** Whether the guitar is in hand. Only shown where a lesson has something to play on it. */
export function GuitarSwitch({ items }: { items: readonly Item[] }) {
  if (!items.some(isPlayable)) return null;
  const { inHand } = settings.value.guitar;
  return (
    <div class="guitar-switch">
      <button
        type="button"
        role="switch"
        aria-checked={inHand}
        aria-describedby="guitar-words"
        data-do="guitar"
        onClick={() => changeGuitar({ inHand: !inHand })}
      >
        <span class="track" aria-hidden="true" />
        Guitar in hand
      </button>
      <p id="guitar-words" class="soft">
        {switchWords(inHand, items.filter(({ kind }) => wantsGuitar(kind)).length)}
      </p>
    </div>
  );
}

function switchWords(inHand: boolean, waiting: number): string {
  if (inHand) {
    return 'In a round the phone listens to your guitar. Nothing is recorded, nothing leaves the phone.';
  }
  if (waiting === 0) return 'Off: everything is tapped, and the phone does not listen.';
  return `Off: ${waiting === 1 ? 'one card that is' : `${waiting} cards that are`} played ${waiting === 1 ? 'waits' : 'wait'} until you have it.`;
}
