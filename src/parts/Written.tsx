import { isBlank } from '../decks/plain.ts';

/** What a person wrote, set apart from the line around it whatever script it is in; said where nothing is to be seen of it. */
export function Written({ text }: { text: string }) {
  return <bdi>{isBlank(text) ? 'no name' : text}</bdi>;
}

/** Words in which no string set or range, `5–4`, is broken after its dash. */
export function Unbroken({ text }: { text: string }) {
  return (
    <>
      {text
        .split(/(\d(?:–\d+)+)/)
        .map((part, index) => (index % 2 ? <span class="unbroken">{part}</span> : part))}
    </>
  );
}
