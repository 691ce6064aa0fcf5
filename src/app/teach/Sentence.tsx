import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { isPlain } from '../../making/draft.ts';
import { daysUntil } from '../days.ts';
import { Unbroken } from '../../parts/Written.tsx';
import { settings } from '../state.ts';
import { CardChoice } from './CardChoice.tsx';
import { change, draft } from './kept/openDraft.ts';
import { KeyChoice } from './KeyChoice.tsx';
import { LessonDay } from './LessonDay.tsx';
import { hasChords, partWords, type Part } from './sentenceWords.ts';
import { DegreeChoice, FretChoice, SizeChoice, StringChoice } from './TogetherChoices.tsx';

const NAMES: Readonly<Record<Part, string>> = {
  chords: 'Chords',
  key: 'Key',
  strings: 'Strings',
  frets: 'Frets',
  cards: 'Cards',
  day: 'Next lesson',
};

/** What is tapped in the sentence opens beneath it. */
const PANEL = 'sentence-panel';

/** The lesson as one sentence, each part of it to be tapped and changed. */
export function Sentence() {
  // Whoever begins chooses the key first.
  const [open, setOpen] = useState<Part | null>(isPlain(draft.value) ? 'key' : null);
  const tap = (part: Part, mark = '') => (
    <PartButton
      {...{ part, mark }}
      open={open === part}
      use={() => setOpen(open === part ? null : part)}
    />
  );
  const { lessonDay } = draft.value;
  const chords = hasChords(draft.value);
  return (
    <section class="sentence" aria-label="The lesson in a sentence">
      <p>
        {chords && <>{tap('chords')} of </>}
        {tap('key', chords ? '' : ':')}
        {chords && (
          <>
            {' '}
            on {tap('strings', ',')} frets {tap('frets', ':')}
          </>
        )}{' '}
        {tap('cards')} · next lesson {tap('day')}
      </p>
      {lessonDay && daysUntil(lessonDay, Date.now()) < 0 && (
        <p class="notice" role="status">
          That day is past: choose another, or none.
        </p>
      )}
      {open && (
        <div class="sheet panel" id={PANEL}>
          <Panel part={open} />
        </div>
      )}
    </section>
  );
}

interface PartButtonProps {
  part: Part;
  /** What follows it in the sentence, without a space between. */
  mark: string;
  open: boolean;
  use(): void;
}

function PartButton({ part, mark, open, use }: PartButtonProps) {
  const words = partWords(part, draft.value, settings.value.naming, Date.now());
  return (
    <button
      type="button"
      class="part"
      aria-expanded={open}
      aria-controls={open ? PANEL : undefined}
      aria-label={`${NAMES[part]}: ${words}`}
      onClick={use}
    >
      <span>
        <Unbroken text={words} />
      </span>
      {mark}
    </button>
  );
}

function Panel({ part }: { part: Part }): ComponentChildren {
  const { instrument, key, degrees, sizes, strings, frets } = draft.value;
  switch (part) {
    case 'key':
      return <KeyChoice />;
    case 'chords':
      return (
        <>
          <SizeChoice sizes={sizes} choose={(chosen) => change({ sizes: chosen })} />
          <DegreeChoice
            musicKey={key}
            size={sizes[0]}
            degrees={degrees}
            choose={(chosen) => change({ degrees: chosen })}
          />
        </>
      );
    case 'strings':
      return (
        <StringChoice
          instrument={instrument}
          strings={strings}
          choose={(chosen) => change({ strings: chosen })}
        />
      );
    case 'frets':
      return (
        <FretChoice
          instrument={instrument}
          frets={frets}
          choose={(chosen) => change({ frets: chosen })}
        />
      );
    case 'cards':
      return <CardChoice />;
    case 'day':
      return <LessonDay />;
  }
}
