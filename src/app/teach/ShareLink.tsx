import { useEffect, useState } from 'preact/hooks';
import type { Deck } from '../../decks/deck.ts';
import { deckLink } from '../../decks/link.ts';
import { qrPicture, type QrPicture } from '../../decks/qr.ts';
import { base } from '../router.ts';

/** A lesson's link: to copy, to share, to scan. */
export function ShareLink({ deck, leave }: { deck: Deck; leave(): void }) {
  const [link, setLink] = useState('');
  const [qr, setQr] = useState<QrPicture | null>(null);
  const [said, setSaid] = useState('');
  useEffect(() => {
    void deckLink(deck, base()).then(async (made) => {
      setLink(made);
      setQr(await qrPicture(made));
    });
  }, []);
  const copy = () =>
    navigator.clipboard.writeText(link).then(
      () => setSaid('Copied. Paste it into a message to your student.'),
      () => setSaid('This browser does not let the page copy. Press and hold the link to copy it.'),
    );
  const share = () =>
    navigator.share({ title: deck.title, url: link }).catch((error: Error) => {
      if (error.name !== 'AbortError') setSaid('Sharing did not work here. Copy the link instead.');
    });
  return (
    <main class="screen share">
      <h1>{deck.title}</h1>
      <label class="label" for="made-link">
        The lesson’s link · {link.length} characters
      </label>
      <textarea
        id="made-link"
        class="made-link"
        readOnly
        rows={4}
        value={link}
        onFocus={(event) => event.currentTarget.select()}
      />
      <div class="buttons">
        <button type="button" class="button main" onClick={() => void copy()}>
          Copy
        </button>
        {'share' in navigator && (
          <button type="button" class="button" onClick={() => void share()}>
            Share
          </button>
        )}
      </div>
      <p role="status">{said}</p>
      {qr && (
        <figure>
          <svg
            class="qr"
            viewBox={`0 0 ${qr.size} ${qr.size}`}
            role="img"
            aria-label="The link as a QR code"
          >
            <path d={qr.path} />
          </svg>
          <figcaption class="soft">Or let another phone’s camera read it here.</figcaption>
        </figure>
      )}
      <div class="buttons last">
        <a class="button" href={link}>
          Open it here
        </a>
        <button type="button" class="button" onClick={leave}>
          Change it
        </button>
      </div>
    </main>
  );
}
