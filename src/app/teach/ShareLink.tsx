import { Written } from '../../parts/Written.tsx';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Deck } from '../../decks/deck.ts';
import { deckLink } from '../../decks/deckLink.ts';
import { useFocusOnTitle } from '../focus.ts';
import { LinkBox } from '../LinkBox.tsx';
import { base } from '../router.ts';
import { keepMade } from '../keptLessons.ts';
import { markShared } from './kept/kept.ts';

/** A lesson's link: to copy, to share, to scan. */
export function ShareLink({ deck, leave }: { deck: Deck; leave(): void }) {
  const { link, fault } = useDeckLink(deck);
  const title = useFocusOnTitle();
  return (
    <main class="screen share">
      <h1 ref={title} tabIndex={-1}>
        <Written text={deck.title} />
      </h1>
      <TheLink {...{ deck, link, fault }} />
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

/** The same beside the lesson's form, where there is room for both. */
export function LinkBeside({ deck }: { deck: Deck }) {
  const { link, fault } = useDeckLink(deck);
  const title = useRef<HTMLHeadingElement>(null);
  useEffect(() => title.current?.focus(), []);
  return (
    <section class="share" aria-label="The link">
      <h2 ref={title} tabIndex={-1}>
        <Written text={deck.title} />
      </h2>
      <TheLink {...{ deck, link, fault }} />
    </section>
  );
}

interface DeckLink {
  /** Empty until it is made. */
  readonly link: string;
  readonly fault: string | null;
}

/** Makes the link of a deck, which then counts as shared. */
function useDeckLink(deck: Deck): DeckLink {
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
  return { link, fault };
}

function TheLink({ deck, link, fault }: DeckLink & { deck: Deck }) {
  if (fault !== null) {
    return (
      <p class="notice bad" role="alert">
        This lesson has no link yet. {fault}
      </p>
    );
  }
  return (
    <LinkBox
      label="The lesson’s link"
      title={deck.title}
      link={link}
      copied="Copied. Paste it into a message to your student."
      text="Tap, then Start. Works offline."
    />
  );
}
