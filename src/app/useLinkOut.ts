import { useState } from 'preact/hooks';

/** A link's ways out of the page, and what is said of the last that was tried. */
interface LinkOut {
  readonly said: string;
  say(sentence: string): void;
  copy(): Promise<void>;
  share(): Promise<void>;
}

/**
 * @param copied what is said once it was copied
 * @param beside what a share sheet is given with it
 */
export function useLinkOut(link: string, copied: string, beside: ShareData = {}): LinkOut {
  const [said, say] = useState('');
  const copy = () =>
    navigator.clipboard.writeText(link).then(
      () => say(copied),
      () => say('This browser does not let the page copy. Press and hold the link to copy it.'),
    );
  const share = () =>
    navigator.share({ ...beside, url: link }).catch((error: Error) => {
      if (error.name !== 'AbortError') say('Sharing did not work here. Copy the link instead.');
    });
  return { said, say, copy, share };
}
