import { useState } from 'preact/hooks';
import { readReport } from '../../decks/report.ts';
import { go } from '../router.ts';

/** A report's link out of a message. */
export function PasteReport() {
  const [fault, setFault] = useState<string | null>(null);
  const open = (event: SubmitEvent) => {
    event.preventDefault();
    const text = String(new FormData(event.currentTarget as HTMLFormElement).get('link') ?? '');
    const read = readReport(text);
    if ('fault' in read) setFault(read.fault);
    else go('report', read.payload);
  };
  return (
    <form class="paste" onSubmit={open}>
      <label class="label" for="link">
        A report’s link
      </label>
      <div class="paste-row">
        <input
          id="link"
          name="link"
          type="text"
          inputMode="url"
          autocomplete="off"
          spellcheck={false}
          placeholder="Paste it here"
        />
        <button type="submit" class="button">
          Open
        </button>
      </div>
      {fault && (
        <p class="notice bad" role="alert">
          {fault}
        </p>
      )}
    </form>
  );
}
