/**
 * A lesson's link: its document in few letters, deflated, in an envelope, behind `#/lesson/`.
 *
 * The letters are fields with a control character between them, which no document can hold; empty fields at the end are
 * left out.
 */
import { altered, openLink, type Fault } from './envelope.ts';
import { DOCUMENT_VERSION } from './version.ts';

/** The most bytes that a link may inflate to: more than any document within its limits takes. */
const MOST_INFLATED = 200_000;

export const FIELD = '\u001f';

/**
 * The letters of a link, whatever they say, or what is wrong with the link and what to do.
 *
 * @param text the whole address, the part after `#`, or the payload alone, as pasted from a message
 */
export async function lettersOf(text: string): Promise<string | Fault> {
  // A link has the version of the document in it.
  const opened = openLink('lesson', DOCUMENT_VERSION, text);
  if ('fault' in opened) return opened;
  const letters = await inflate(opened.body);
  if (letters === null) return { fault: altered('lesson') };
  if (letters !== 'too large') return letters;
  return {
    fault:
      'This lesson link unpacks to more than any lesson holds, so it was not opened. Ask your teacher for it once more.',
  };
}

/** The text that bytes inflate to; read piece by piece, so that a small link cannot fill the memory. */
async function inflate(bytes: Uint8Array<ArrayBuffer>): Promise<string | 'too large' | null> {
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('deflate-raw'));
  const reader = stream.getReader();
  const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
  let text = '';
  let length = 0;
  try {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return text + decoder.decode();
      length += value.length;
      if (length > MOST_INFLATED) {
        await reader.cancel();
        return 'too large';
      }
      text += decoder.decode(value, { stream: true });
    }
  } catch {
    // Not a deflated stream, or not text in it: the streams have no other way of telling.
    return null;
  }
}
