import { useEffect, useState } from 'preact/hooks';
import { KINDS } from '../../cards/here.ts';
import { soundSentence, soundState } from '../../sound/index.ts';
import { isSilent } from '../settings.ts';
import { settings } from '../state.ts';
import { draw, round, shown } from './session.ts';

/** What keeps the sound from coming, where something does. A card that cannot be heard any more gives way to another. */
export function SoundNotice() {
  const isMuted = isSilent(settings.value);
  const [gaveWay, setGaveWay] = useState(false);
  useEffect(() => {
    const kind = shown.value?.card.item.kind;
    const isUnheard = isMuted && kind !== undefined && KINDS[kind].needs.includes('sound');
    // Once answered it stays, to be seen.
    const gives = isUnheard && round.value?.open != null;
    setGaveWay(gives);
    if (gives) void draw();
  }, [isMuted]);
  // That it is on its way is said in the bar: nothing moves when it is there.
  const sentence =
    (soundState.value !== 'loading' && soundSentence.value) ||
    (gaveWay && 'Sound is muted: what must be heard is not asked until the loudspeaker is on.');
  return sentence ? (
    <p class="notice" role="status">
      {sentence}
    </p>
  ) : null;
}
