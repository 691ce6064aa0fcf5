import { useEffect, useState } from 'preact/hooks';
import { qrPicture, type QrPicture } from '../decks/qr.ts';
import { useLinkOut } from './useLinkOut.ts';
import './LinkBox.css';

interface LinkBoxProps {
  /** What stands over the link. */
  label: string;
  title: string;
  link: string;
  /** Where to paste it, after it was copied. */
  copied: string;
  /** What stands beside the link where it is shared: what to do with it. */
  text: string;
}

/** A link that was made: to copy, to share, to scan. */
export function LinkBox({ label, title, link, copied, text }: LinkBoxProps) {
  const { said, say, copy, share } = useLinkOut(link, copied, { title, text });
  const qr = useQr(link, say);
  const canShare = 'share' in navigator;
  return (
    <>
      <label class="label" for="made-link">
        {label} · {link.length} characters
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
        {canShare && (
          <button type="button" class="button main" onClick={() => void share()}>
            Share
          </button>
        )}
        <button
          type="button"
          class={canShare ? 'button' : 'button main'}
          onClick={() => void copy()}
        >
          Copy
        </button>
      </div>
      <p role="status">{said}</p>
      {qr && <Qr {...qr} />}
    </>
  );
}

/** The link's QR code, once it is drawn; why there is none is told, and that nothing is to be told of another link. */
function useQr(link: string, say: (sentence: string) => void): QrPicture | null {
  const [qr, setQr] = useState<QrPicture | null>(null);
  useEffect(() => {
    say('');
    let current = link !== '';
    if (current) {
      void qrPicture(link).then(
        (picture) => current && setQr(picture),
        (error: Error) => current && (setQr(null), say(error.message)),
      );
    }
    return () => {
      current = false;
    };
  }, [link]);
  return qr;
}

function Qr({ size, path }: QrPicture) {
  return (
    <figure>
      <svg class="qr" viewBox={`0 0 ${size} ${size}`} role="img" aria-label="The link as a QR code">
        <path d={path} />
      </svg>
      <figcaption class="soft">Or let a phone’s camera read it.</figcaption>
    </figure>
  );
}
