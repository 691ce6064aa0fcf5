import type { ComponentChildren } from 'preact';
import './Paths.css';

interface PathsProps {
  /** What a screen reader calls them. */
  label: string;
  /** Each with what it stands for as an answer. */
  paths: readonly { readonly answer: string; readonly content: ComponentChildren }[];
  right: string;
  /** The answer given: from then on none can be. */
  chosen: string | null;
  /** Whether it was judged: then only the right one and the one chosen are left. */
  judged: boolean;
  choose(answer: string): void;
}

/** Answers one below the other. */
export function Paths({ label, paths, right, chosen, judged, choose }: PathsProps) {
  const shown = judged
    ? paths.filter(({ answer }) => answer === right || answer === chosen)
    : paths;
  return (
    <div class="paths" role="group" aria-label={label}>
      {shown.map(({ answer, content }) => (
        <button
          type="button"
          key={answer}
          class={`path ${judged ? (answer === right ? 'right' : 'wrong') : ''}`}
          data-answer={answer}
          aria-disabled={chosen !== null}
          aria-pressed={chosen === answer}
          onClick={() => choose(answer)}
        >
          {content}
          {judged && <span class="unseen">{answer === right ? 'right' : 'wrong'}</span>}
        </button>
      ))}
    </div>
  );
}
