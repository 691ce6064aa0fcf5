import { useEffect, useState } from 'preact/hooks';
import { keptWords, onIPhone } from './keptWords.ts';

/** What the device has said of keeping the data; `silent` where the browser has no such answer, null before. */
type Answer = boolean | 'silent' | null;

/** How long what is here is kept, as the device has answered. */
export function KeptHere() {
  const [answer, setAnswer] = useState<Answer>(null);
  const [asked, setAsked] = useState(false);
  const storage = (navigator as Partial<Navigator>).storage as Partial<StorageManager> | undefined;
  const ask = (question: Promise<boolean> | undefined) =>
    void (question ?? Promise.resolve('silent' as const)).then(setAnswer, () =>
      setAnswer('silent'),
    );
  useEffect(() => ask(storage?.persisted?.()), []);
  const askNow = () => {
    setAsked(true);
    ask(storage?.persist?.());
  };
  if (answer === null) return null;
  const { standalone } = navigator as { standalone?: boolean };
  return (
    <>
      <p class="soft" role="status">
        {keptWords(answer, asked)}
      </p>
      {standalone !== undefined && <p class="soft">{onIPhone(standalone)}</p>}
      {answer === false && (
        <button type="button" class="button small" onClick={askNow}>
          Ask the device to keep it
        </button>
      )}
    </>
  );
}
