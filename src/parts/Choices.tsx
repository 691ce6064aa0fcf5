import type { ComponentChildren } from 'preact';
import './Choices.css';

/** Things to choose from, under one heading. */
export function Choices({
  legend,
  children,
}: {
  legend: ComponentChildren;
  children: ComponentChildren;
}) {
  return (
    <fieldset class="choices">
      <legend>{legend}</legend>
      <div>{children}</div>
    </fieldset>
  );
}

interface ChoiceProps {
  label: string;
  checked: boolean;
  /** Choices of one name exclude each other; without one each stands for itself. */
  name?: string;
  music?: boolean;
  disabled?: boolean;
  /** Whether it would do nothing now: it is grey, chosen or not. */
  idle?: boolean;
  /** Drawn instead of the label, which then is only said. */
  children?: ComponentChildren;
  change(checked: boolean): void;
}

/** One of them: ink when chosen. */
export function Choice(props: ChoiceProps) {
  const { label, checked, name, music, disabled, idle, children, change } = props;
  return (
    <label class={`choice ${music ? 'music' : ''} ${idle ? 'idle' : ''}`}>
      <input
        type={name ? 'radio' : 'checkbox'}
        name={name}
        checked={checked}
        disabled={disabled}
        aria-label={children ? label : undefined}
        onChange={(event) => change(event.currentTarget.checked)}
      />
      <span class="button">{children ?? label}</span>
    </label>
  );
}
