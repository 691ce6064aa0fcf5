import { Written } from '../../parts/Written.tsx';
import { useEffect, useState } from 'preact/hooks';
import type { Deck } from '../../decks/deck.ts';
import { deckLink } from '../../decks/link.ts';
import { useFocusOnTitle } from '../focus.ts';
import { LinkBox } from '../LinkBox.tsx';
import { base } from '../router.ts';
import { keepMade } from '../state.ts';
import { markShared } from './kept/kept.ts';

/** A lesson's link: to copy, to share, to scan. */
export function ShareLink({ deck, leave }: { deck: Deck; leave(): void }) {
  const [link, setLink] = useState('');
  const [fault, setFault] = useState<string | null>(null);
  useEffect(() => {
    void deckLink(deck, base()).then(
      (made) => {
        setLink(made);
        // So that this device knows the lesson when reports on it come back.
        void keepMade(deck).then(markShared);
      },
      (error: unknown) => {
        if (!(error instanceof RangeError)) throw error;
        setFault(error.message);
      },
    );
  }, []);
  const title = useFocusOnTitle();
  return (
    <main class="screen share">
      <h1 ref={title} tabIndex={-1}>
        <Written text={deck.title} />
      </h1>
      {fault === null ? (
        <LinkBox
          label="The lesson’s link"
          title={deck.title}
          link={link}
          copied="Copied. Paste it into a message to your student."
          text="Tap, then Start. Works offline."
        />
      ) : (
        <p class="notice bad" role="alert">
          This lesson has no link yet. {fault}
        </p>
      )}
      <div class="buttons last">
        {fault === null && (
          <a class="button" href={link}>
            Open it here
          </a>
        )}
        <button type="button" class="button" onClick={leave}>
          Change it
        </button>
      </div>
    </main>
  );
}
