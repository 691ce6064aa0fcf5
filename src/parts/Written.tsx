import { isBlank } from '../decks/plain.ts';

/** What a person wrote, set apart from the line around it whatever script it is in; said where nothing is to be seen of it. */
export function Written({ text }: { text: string }) {
  return <bdi>{isBlank(text) ? 'no name' : text}</bdi>;
}
