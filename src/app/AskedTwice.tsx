import { useRef, useState } from 'preact/hooks';
import { useFocusAfter } from './focus.ts';

interface AskedTwiceProps {
  /** What the button says that begins it. */
  name: string;
  /** What screen readers are told beside the name, where there are several: of what. */
  of?: string;
  /** What is asked first, and what then. */
  first: string;
  second: string;
  /** What the way back says, and what the way on says, first and then. */
  keep: string;
  doIt: readonly [string, string];
  done(): void;
}

/** Asks twice: the second time the other way round, so that a double tap on the first answer is not an answer to it. */
export function AskedTwice({ name, of, first, second, keep, doIt, done }: AskedTwiceProps) {
  const [asking, setAsking] = useState<'no' | 'once' | 'twice'>('no');
  const root = useRef<HTMLDivElement>(null);
  const focus = useFocusAfter(root);
  const label = of === undefined ? name : `${name}: ${of}`;
  const ask = (now: typeof asking) => {
    setAsking(now);
    focus('.keep', '.quiet');
  };
  const buttons = [
    <button key="keep" type="button" class="button main keep" onClick={() => ask('no')}>
      {keep}
    </button>,
    <button
      key={asking}
      type="button"
      class="button"
      onClick={() => (asking === 'once' ? ask('twice') : done())}
    >
      {doIt[asking === 'once' ? 0 : 1]}
    </button>,
  ];
  return (
    <div ref={root}>
      {asking === 'no' ? (
        <button type="button" class="button quiet" aria-label={label} onClick={() => ask('once')}>
          {name}
        </button>
      ) : (
        <div class="notice bad" role="alertdialog" aria-label={label}>
          <p>{asking === 'once' ? first : second}</p>
          <div class="buttons">{asking === 'once' ? buttons : buttons.toReversed()}</div>
        </div>
      )}
    </div>
  );
}
