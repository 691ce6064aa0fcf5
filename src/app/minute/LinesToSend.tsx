import { useEffect, useState } from 'preact/hooks';
import type { Deck } from '../../decks/deck.ts';
import { deckLink } from '../../decks/deckLink.ts';
import { counted } from '../figures.ts';
import { base } from '../router.ts';
import { useLinkOut } from '../useLinkOut.ts';
import { minutes } from './minutes.ts';

const date = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long' });
/** So many are offered, the last ones kept. */
const OFFERED = 3;

/** The lines kept of a lesson's free minutes, each by a link that goes into the message with the report. */
export function LinesToSend({ lesson }: { lesson: string }) {
  const kept = (minutes.value ?? []).filter((one) => one.lesson === lesson && one.line !== null);
  if (kept.length === 0) return null;
  return (
    <section>
      <h2 class="label">Lines you kept</h2>
      <p class="soft">
        A line goes by a link of its own: paste it behind the report’s, in the same message.
      </p>
      {kept
        .slice(-OFFERED)
        .toReversed()
        .map(({ at, line }) => (
          <LineToSend key={at} name={`Line of ${date.format(at)}`} line={line!} />
        ))}
    </section>
  );
}

function LineToSend({ name, line }: { name: string; line: Deck }) {
  const [link, setLink] = useState('');
  useEffect(() => {
    void deckLink({ ...line, title: name }, base()).then(setLink);
  }, [line]);
  const { said, copy } = useLinkOut(link, 'Copied. Paste it behind the report.');
  return (
    <div class="field" data-line={name}>
      <label>
        <span class="label">
          {name} · {counted(line.phrases[0]!.notes.length, 'note')}
        </span>
        <input
          type="text"
          readOnly
          value={link}
          onFocus={(event) => event.currentTarget.select()}
        />
      </label>
      <div class="buttons">
        <button
          type="button"
          class="button small"
          disabled={link === ''}
          onClick={() => void copy()}
        >
          Copy its link
        </button>
        <span role="status">{said}</span>
      </div>
    </div>
  );
}
