import { Choice, Choices } from '../../parts/Choices.tsx';
import { settings } from '../state.ts';
import { changeGuitar } from './inHand.ts';

/** What can be chosen of rounds with the guitar. */
export function GuitarSettings() {
  const { byItself, spoken, delay } = settings.value.guitar;
  return (
    <section>
      <Choices legend="With the guitar in hand">
        <Choice
          label="The next card comes by itself"
          checked={byItself}
          change={(now) => changeGuitar({ byItself: now })}
        />
        <Choice
          label="Questions are spoken"
          checked={spoken}
          change={(now) => changeGuitar({ spoken: now })}
        />
      </Choices>
      <p class="soft">
        {delay === null
          ? 'How late sound comes back to this phone is measured when you tune up.'
          : `Sound takes ${Math.round(delay * 1000)} ms out of this phone and in again; it is measured when you tune up.`}{' '}
        Questions are spoken only by an English voice that is on the phone itself.
      </p>
    </section>
  );
}
