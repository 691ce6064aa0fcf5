import { useEffect, useRef, useState } from 'preact/hooks';
import type { Deck } from '../../decks/deck.ts';
import { deckLink } from '../../decks/link.ts';
import { LinkBox } from '../LinkBox.tsx';
import { base } from '../router.ts';
import { keepMade } from '../state.ts';
import { markShared } from './kept.ts';

/** A lesson's link: to copy, to share, to scan. */
export function ShareLink({ deck, leave }: { deck: Deck; leave(): void }) {
  const [link, setLink] = useState('');
  useEffect(() => {
    void deckLink(deck, base()).then(setLink);
    // So that this device knows the lesson when reports on it come back.
    void keepMade(deck).then(markShared);
  }, []);
  const title = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    scrollTo(0, 0);
    title.current?.focus();
  }, []);
  return (
    <main class="screen share">
      <h1 ref={title} tabIndex={-1}>
        {deck.title}
      </h1>
      <LinkBox
        label="The lesson’s link"
        title={deck.title}
        link={link}
        copied="Copied. Paste it into a message to your student."
      />
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
