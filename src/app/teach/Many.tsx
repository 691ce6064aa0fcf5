import type { ComponentChildren } from 'preact';
import { Choice, Choices } from '../../parts/Choices.tsx';

interface ManyProps<T extends string> {
  legend: string;
  music?: boolean;
  all: readonly T[];
  chosen: readonly T[];
  label(value: T): string;
  choose(chosen: T[]): void;
  /** What brings in more of them. */
  children?: ComponentChildren;
}

/** Any number out of several, kept in their order. */
export function Many<T extends string>(props: ManyProps<T>) {
  const { legend, music = false, all, chosen, label, choose, children } = props;
  return (
    <Choices legend={legend}>
      {all.map((value) => (
        <Choice
          key={value}
          music={music}
          label={label(value)}
          checked={chosen.includes(value)}
          change={(on) =>
            choose(all.filter((other) => (other === value ? on : chosen.includes(other))))
          }
        />
      ))}
      {children}
    </Choices>
  );
}
