import { Choice, Choices } from '../../parts/Choices.tsx';
import { pluck, type KeySound } from '../../sound/index.ts';
import { NAMINGS, type Naming } from '../../theory/naming.ts';
import { KEY_SOUNDS } from '../settings.ts';
import { changeSettings, opened, settings } from '../state.ts';
import { Backup } from './Backup.tsx';
import './Settings.css';

const NAMING_WORDS: Record<Naming, string> = {
  english: 'C D E, B♭',
  german: 'C D E, B and H',
  solfege: 'Do Re Mi, fixed',
  movable: 'do re mi, movable',
  degrees: '1 2 3',
};

const THEMES = { auto: 'as the phone', light: 'light', dark: 'dark' } as const;

const KEY_SOUND_WORDS: Record<KeySound, string> = {
  cadence: 'a short cadence',
  drone: 'the tonic held',
  chord: 'the tonic chord',
};

/** Takes a pitch within the bounds; any other is put back. */
function changeReference(input: HTMLInputElement): void {
  const wanted = Number(input.value);
  if (wanted >= 430 && wanted <= 450) changeSettings({ reference: wanted });
  else input.value = String(settings.value.reference);
}

/** Sound, names of notes, and light or dark. */
export default function Settings() {
  const { naming, chordNames, reasons, volume, muted, theme, keySound, reference } = settings.value;
  return (
    <main class="screen">
      <h1>Sound and names</h1>
      <section>
        <label class="label" for="volume">
          Volume
        </label>
        <input
          id="volume"
          type="range"
          min="0"
          max="1"
          step="0.05"
          value={volume}
          onInput={(event) => changeSettings({ volume: Number(event.currentTarget.value) })}
          onChange={() => pluck(58)}
        />
        <Choice label="Mute" checked={muted} change={(now) => changeSettings({ muted: now })} />
        <p class="soft">
          Keep it low, above all on headphones: what is loud for long harms the ear.
        </p>
      </section>
      <Choices legend="The key, before a phrase is heard">
        {KEY_SOUNDS.map((name) => (
          <Choice
            key={name}
            label={KEY_SOUND_WORDS[name]}
            name="key-sound"
            checked={keySound === name}
            change={() => changeSettings({ keySound: name })}
          />
        ))}
      </Choices>
      <label class="field">
        <span class="label">A above middle C, Hz</span>
        <input
          type="number"
          min="430"
          max="450"
          value={reference}
          onChange={(event) => changeReference(event.currentTarget)}
        />
      </label>
      <Choices legend="Names of notes">
        {NAMINGS.map((name) => (
          <Choice
            key={name}
            label={NAMING_WORDS[name]}
            name="naming"
            checked={naming === name}
            change={() => changeSettings({ naming: name })}
          />
        ))}
      </Choices>
      <Choices legend="On the cards">
        <Choice
          label="Chord names"
          checked={chordNames}
          change={(now) => changeSettings({ chordNames: now })}
        />
        <Choice
          label="Reasons"
          checked={reasons}
          change={(now) => changeSettings({ reasons: now })}
        />
      </Choices>
      <Choices legend="Light and dark">
        {(Object.keys(THEMES) as (keyof typeof THEMES)[]).map((name) => (
          <Choice
            key={name}
            label={THEMES[name]}
            name="theme"
            checked={theme === name}
            change={() => changeSettings({ theme: name })}
          />
        ))}
      </Choices>
      {opened.value && <Backup />}
      <a class="button" href="#/today">
        Back to today
      </a>
    </main>
  );
}
