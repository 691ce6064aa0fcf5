import type { ComponentChildren } from 'preact';
import { SIZES, type Size } from '../../theory/chord.ts';
import { USUAL_TONICS, type Key } from '../../theory/key.ts';
import { noteLabel, scaleLabel } from '../../theory/naming.ts';
import { hasSevenNotes, SCALE_KINDS, type ScaleKind } from '../../theory/scale.ts';
import { settings } from '../state.ts';
import {
  viewInKey,
  positions,
  SHOWN,
  stringSets,
  type ShownOnDots,
  type View,
  type Where,
} from './view.ts';
import { onStrings, shapeSets } from './shape.ts';
import { shapeOn, whereWords } from './viewWords.ts';

const TONICS = [...'CDEFGAB'].flatMap((letter) =>
  ['bb', 'b', '', '#', '##'].map((signs) => letter + signs),
);
const RARER = TONICS.filter((tonic) => !USUAL_TONICS.includes(tonic));

interface HeadProps {
  view: View;
  change(view: View): void;
  more: boolean;
  setMore(more: boolean): void;
}

/** What is chosen often: the key as the title, and under it what of the key is shown, how, and where. */
export function Head({ view, change, more, setMore }: HeadProps) {
  const oneShape = view.where && 'shape' in view.where;
  return (
    <header class="head">
      <KeyTitle musicKey={view.key} choose={(key) => change(viewInKey(view, key))} />
      <button
        type="button"
        class="button small more"
        aria-expanded={more}
        onClick={() => setMore(!more)}
      >
        {more ? 'Done' : 'More'}
      </button>
      <div class="choose">
        <Select
          label="On the dots"
          value={view.shown}
          choose={(shown) => change({ ...view, shown: shown as ShownOnDots })}
        >
          {SHOWN.map((shown) => (
            <option key={shown} disabled={shown === 'fingers' && !oneShape}>
              {shown}
            </option>
          ))}
        </Select>
        <Select
          label="Arpeggios"
          value={view.size}
          disabled={!hasSevenNotes(view.key.scale)}
          choose={(size) => change({ ...view, size: size as Size })}
        >
          {SIZES.map((size) => (
            <option key={size} value={size}>
              {size}s
            </option>
          ))}
        </Select>
        <WhereChoice view={view} change={change} />
      </div>
    </header>
  );
}

function KeyTitle({ musicKey, choose }: { musicKey: Key; choose(key: Key): void }) {
  const { naming } = settings.value;
  const absolute = naming === 'german' || naming === 'solfege' ? naming : 'english';
  const options = (tonics: readonly string[]) =>
    tonics.map((tonic) => (
      <option key={tonic} value={tonic}>
        {noteLabel(tonic, absolute, { tonic, scale: 'major' })}
      </option>
    ));
  return (
    <div class="key-title">
      <Select
        label="Tonic"
        value={musicKey.tonic}
        choose={(tonic) => choose({ ...musicKey, tonic })}
      >
        <optgroup label="Usual">{options(USUAL_TONICS)}</optgroup>
        <optgroup label="Rarer">{options(RARER)}</optgroup>
      </Select>
      <Select
        label="Scale"
        long={musicKey.scale.length > 13}
        value={musicKey.scale}
        choose={(scale) => choose({ ...musicKey, scale: scale as ScaleKind })}
      >
        {SCALE_KINDS.map((scale) => (
          <option key={scale} value={scale}>
            {scaleLabel(scale)}
          </option>
        ))}
      </Select>
    </div>
  );
}

function WhereChoice({ view, change }: { view: View; change(view: View): void }) {
  const { instrument, where } = view;
  const frets = positions(instrument).map((span): Where => ({ frets: span }));
  const strings = stringSets(instrument).map((set): Where => ({ strings: set }));
  const shaped = shapeSets(view);
  const all = [null, ...frets, ...strings];
  const words = [...all.map(whereWords), ...shaped.map(shapeOn)];
  const listed = words.includes(whereWords(where));
  const choose = (chosen: string) => {
    const set = shaped.find((one) => shapeOn(one) === chosen);
    if (set) change(onStrings(view, set));
    else change({ ...view, where: all.find((one) => whereWords(one) === chosen) ?? null });
  };
  const options = (some: readonly string[]) => some.map((one) => <option key={one}>{one}</option>);
  return (
    <Select label="Where" value={whereWords(where)} choose={choose}>
      {options([null, ...(listed ? [] : [where])].map(whereWords))}
      <optgroup label="One position">{options(frets.map(whereWords))}</optgroup>
      <optgroup label="One string set">{options(strings.map(whereWords))}</optgroup>
      {shaped.length > 0 && <optgroup label="One shape">{options(shaped.map(shapeOn))}</optgroup>}
    </Select>
  );
}

interface SelectProps {
  label: string;
  value: string;
  disabled?: boolean;
  /** Whether what is chosen has a long name. */
  long?: boolean;
  choose(value: string): void;
  children: ComponentChildren;
}

function Select({ label, value, disabled = false, long = false, choose, children }: SelectProps) {
  return (
    <select
      class={long ? 'long' : undefined}
      aria-label={label}
      value={value}
      disabled={disabled}
      onChange={(event) => choose(event.currentTarget.value)}
    >
      {children}
    </select>
  );
}
