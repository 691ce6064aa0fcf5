import { useState } from 'preact/hooks';
import { INSTRUMENTS, instrumentId, tuningText, type Instrument } from '../../neck/instrument.ts';
import { instrumentFault, instrumentFromId } from '../../neck/instrumentFault.ts';
import { drawnFor } from '../../parts/handedness.ts';
import { Choice } from '../../parts/Choices.tsx';
import { base } from '../router.ts';
import { useLinkOut } from '../useLinkOut.ts';
import { writeView } from './address.ts';
import { viewOnInstrument, range, type View } from './view.ts';

interface MoreProps {
  view: View;
  change(view: View): void;
}

const OWN = 'own tuning';

/** What is chosen once and then left: the instrument; and the ways out, a link and a sheet of paper. */
export function More({ view, change }: MoreProps) {
  const { instrument } = view;
  const take = (part: Partial<Instrument>) =>
    change(viewOnInstrument(view, { ...instrument, ...part }));
  const tuned = instrumentId({ ...instrument, capo: 0 });
  const listed = INSTRUMENTS.find((other) => instrumentId(other) === tuned);
  const [own, setOwn] = useState(!listed);
  return (
    <div class="more-choices">
      <label class="field">
        <span class="label">Instrument</span>
        <select
          value={own || !listed ? OWN : listed.name}
          onChange={(event) => {
            const chosen = INSTRUMENTS.find(({ name }) => name === event.currentTarget.value);
            setOwn(!chosen);
            if (chosen)
              take({ ...chosen, capo: instrument.capo, leftHanded: instrument.leftHanded });
          }}
        >
          {INSTRUMENTS.map(({ name }) => (
            <option key={name}>{name}</option>
          ))}
          <option>{OWN}</option>
        </select>
      </label>
      {(own || !listed) && <OwnTuning instrument={instrument} take={take} />}
      <div class="pair">
        <NumberChoice
          label="Capo"
          from={0}
          to={11}
          value={instrument.capo}
          word={(fret) => (fret === 0 ? 'none' : `on fret ${fret}`)}
          choose={(capo) => take({ capo })}
        />
        <NumberChoice
          label="Frets"
          from={12}
          to={27}
          value={instrument.frets}
          choose={(frets) => take({ frets })}
        />
      </div>
      {instrument.capo > 0 && <p class="soft">Frets are counted from the capo.</p>}
      {drawnFor.value === null && (
        <div>
          <Choice
            label="Left-handed"
            checked={instrument.leftHanded}
            change={(leftHanded) => take({ leftHanded })}
          />
        </div>
      )}
      <Ways view={view} />
    </div>
  );
}

/** Strings by note names; taken as soon as they make sense. */
function OwnTuning(props: { instrument: Instrument; take(part: Partial<Instrument>): void }) {
  const { instrument, take } = props;
  const [text, setText] = useState(tuningText(instrument));
  const meant = (written: string) => ({ ...instrument, tuning: written.trim().split(/[\s,]+/) });
  const fault = instrumentFault(meant(text));
  const write = (written: string) => {
    setText(written);
    const wished = meant(written);
    if (instrumentFault(wished)) return;
    // By way of its id, so that every pitch has one spelling and a known tuning its name.
    const { name, tuning, scaleLength } = instrumentFromId(instrumentId(wished))!;
    take({ name, tuning, scaleLength });
  };
  return (
    <label class="field">
      <span class="label">Open strings, from the highest string number down</span>
      <input
        type="text"
        value={text}
        maxLength={60}
        autocapitalize="off"
        autocomplete="off"
        spellcheck={false}
        aria-invalid={fault !== null}
        onInput={(event) => write(event.currentTarget.value)}
      />
      <span class="soft" role="status">
        {fault ?? 'Notes with their octaves: middle C is C4.'}
      </span>
    </label>
  );
}

interface NumberProps {
  label: string;
  from: number;
  to: number;
  value: number;
  word?(value: number): string;
  choose(value: number): void;
}

function NumberChoice({ label, from, to, value, word = String, choose }: NumberProps) {
  return (
    <label class="field">
      <span class="label">{label}</span>
      <select value={value} onChange={(event) => choose(+event.currentTarget.value)}>
        {range(from, to).map((each) => (
          <option key={each} value={each}>
            {word(each)}
          </option>
        ))}
      </select>
    </label>
  );
}

/** Out of the page: by a link that shows the same, or on paper. */
function Ways({ view }: { view: View }) {
  const link = `${base()}#/neck/${writeView(view)}`;
  const { said, copy, share } = useLinkOut(link, 'Copied. Whoever opens the link sees this neck.');
  return (
    <>
      <label class="field">
        <span class="label">The link to what is shown</span>
        <input
          type="text"
          readOnly
          value={link}
          onFocus={(event) => event.currentTarget.select()}
        />
      </label>
      <div class="buttons">
        <button type="button" class="button" onClick={() => void copy()}>
          Copy
        </button>
        {'share' in navigator && (
          <button type="button" class="button" onClick={() => void share()}>
            Share
          </button>
        )}
        <button type="button" class="button" onClick={() => print()}>
          Print
        </button>
      </div>
      <p role="status">{said}</p>
    </>
  );
}
