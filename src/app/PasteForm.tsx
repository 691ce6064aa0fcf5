import { useState } from 'preact/hooks';
import './PasteForm.css';

interface PasteFormProps {
  label: string;
  /** Goes where a link leads, or says what is wrong with it. */
  open(link: string): string | null | Promise<string | null>;
}

/** A link out of a message, to be pasted. */
export function PasteForm({ label, open }: PasteFormProps) {
  const [fault, setFault] = useState<string | null>(null);
  const submit = async (event: SubmitEvent) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget as HTMLFormElement);
    setFault(await open(String(form.get('link') ?? '')));
  };
  return (
    <form class="paste" onSubmit={(event) => void submit(event)}>
      <label class="label" for="link">
        {label}
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
