import type { ComponentProps } from 'preact';
import { useId, useState } from 'preact/hooks';
import './TextForm.css';

interface TextFormProps {
  label: string;
  /** What is done with the text, in a word. */
  name: string;
  /** Takes the text, or says what is wrong with it. */
  take(text: string): string | null | Promise<string | null>;
  /** What else is to be known of the field. */
  field?: ComponentProps<'input'>;
  /** Whether it is written in at once. */
  begun?: boolean;
}

/** One line of text that is taken, or of which it is said what is wrong. */
export function TextForm({ label, name, take, field, begun = false }: TextFormProps) {
  const [fault, setFault] = useState<string | null>(null);
  const id = useId();
  const submit = async (event: SubmitEvent) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget as HTMLFormElement);
    setFault(await take(String(form.get('text') ?? '')));
  };
  return (
    <form class="paste" onSubmit={(event) => void submit(event)}>
      <label class="label" for={id}>
        {label}
      </label>
      <div class="paste-row">
        <input
          id={id}
          name="text"
          type="text"
          autocomplete="off"
          spellcheck={false}
          ref={(input) => {
            if (begun) input?.focus();
          }}
          {...field}
        />
        <button type="submit" class="button">
          {name}
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

/** A link out of a message, to be pasted. */
export function LinkForm({ label, open }: { label: string; open: TextFormProps['take'] }) {
  return (
    <TextForm
      label={label}
      name="Open"
      take={open}
      field={{ inputMode: 'url', placeholder: 'Paste it here' }}
    />
  );
}
