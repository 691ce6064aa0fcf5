import { Choice, Choices } from '../../parts/Choices.tsx';
import { pluck } from '../../sound/index.ts';
import type { KeySound } from '../../sound/key.ts';
import type { Naming } from '../../theory/naming.ts';
import { GuitarSettings } from '../guitar/GuitarSettings.tsx';
import { changeSettings, opened, settings } from '../state.ts';
import { BackupForm } from './BackupForm.tsx';
import './Settings.css';

const NAMING_WORDS: Record<Naming, string> = {
  english: 'C D E, B♭',
  german: 'C D E, B and H',
  solfege: 'Do Re Mi, fixed',
  movable: 'do re mi, movable',
  degrees: '1 2 3',
};

const THEMES = { auto: 'as the phone', light: 'light', dark: 'dark' } as const;

const HAND_WORDS = {
  lesson: 'as the lesson says',
  right: 'right-handed',
  left: 'left-handed',
} as const;

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
  const { naming, theme, keySound, hand } = settings.value;
  return (
    <main class="screen">
      <h1>Sound and names</h1>
      <Loudness />
      <OneOf
        legend="The key, before a phrase is heard"
        name="key-sound"
        words={KEY_SOUND_WORDS}
        chosen={keySound}
        choose={(next) => changeSettings({ keySound: next })}
      />
      <Reference />
      <OneOf
        legend="Names of notes"
        name="naming"
        words={NAMING_WORDS}
        chosen={naming}
        choose={(next) => changeSettings({ naming: next })}
      />
      <OnCards />
      <OneOf
        legend="Necks are drawn"
        name="hand"
        words={HAND_WORDS}
        chosen={hand}
        choose={(next) => changeSettings({ hand: next })}
      />
      <GuitarSettings />
      <OneOf
        legend="Light and dark"
        name="theme"
        words={THEMES}
        chosen={theme}
        choose={(next) => changeSettings({ theme: next })}
      />
      {opened.value && <BackupForm />}
      <p class="soft">
        <a class="alone" href="./notices.txt">
          Notices of the libraries that Skipwise is made with
        </a>
      </p>
      <a class="button" href="#/today">
        Back to today
      </a>
    </main>
  );
}

function Loudness() {
  const { volume, muted } = settings.value;
  return (
    <section class="loudness">
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
      <p class="soft">Keep it low, above all on headphones: what is loud for long harms the ear.</p>
    </section>
  );
}

interface OneOfProps<T extends string> {
  legend: string;
  /** Tells the group from others on the page. */
  name: string;
  /** What may be chosen, in order, with its words. */
  words: Readonly<Record<T, string>>;
  chosen: T;
  choose(next: T): void;
}

function OneOf<T extends string>({ legend, name, words, chosen, choose }: OneOfProps<T>) {
  return (
    <Choices legend={legend}>
      {(Object.keys(words) as T[]).map((one) => (
        <Choice
          key={one}
          label={words[one]}
          name={name}
          checked={one === chosen}
          change={() => choose(one)}
        />
      ))}
    </Choices>
  );
}

function Reference() {
  return (
    <label class="field">
      <span class="label">A above middle C, Hz</span>
      <input
        type="number"
        min="430"
        max="450"
        value={settings.value.reference}
        onChange={(event) => changeReference(event.currentTarget)}
      />
    </label>
  );
}

function OnCards() {
  const { chordNames, numerals, reasons } = settings.value;
  return (
    <Choices legend="On the cards">
      <Choice
        label="Chord names"
        checked={chordNames}
        change={(now) => changeSettings({ chordNames: now })}
      />
      <Choice
        label="Roman numerals on steps"
        checked={numerals}
        change={(now) => changeSettings({ numerals: now })}
      />
      <Choice
        label="Reasons"
        checked={reasons}
        change={(now) => changeSettings({ reasons: now })}
      />
    </Choices>
  );
}
