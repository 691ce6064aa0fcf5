import { useMemo } from 'preact/hooks';
import type { Deck } from '../../decks/deck.ts';
import { explained } from '../../making/explained.ts';
import { draftOf } from '../../making/fromDeck.ts';
import { AskedTwice } from '../AskedTwice.tsx';
import { PhraseOut } from '../phrases/PhraseOut.tsx';
import { PhraseView } from '../phrases/PhraseView.tsx';
import { go } from '../router.ts';
import { beginDraft, openKept } from '../teach/kept/kept.ts';
import { keep, type Minute } from './minutes.ts';

const day = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long' });

/** A line that was kept of a free minute: as any phrase, and to be made a lesson of. */
export function KeptLine({ minute, line }: { minute: Minute; line: Deck }) {
  const [phrase] = line.phrases;
  const one = useMemo(() => explained(phrase!, line), [line]);
  const title = `Your line of ${day.format(minute.at)}`;
  const intoLesson = async () => {
    await openKept();
    beginDraft({ ...draftOf(line), title });
    go('teach');
  };
  const letGo = () => {
    go('minute');
    void keep({ ...minute, line: null });
  };
  return (
    <main class="screen phrase">
      <header>
        <h1>{title}</h1>
        <a href="#/minute">A free minute</a>
      </header>
      <PhraseView explained={one} />
      <PhraseOut explained={one} title={title} />
      <button type="button" class="button" onClick={() => void intoLesson()}>
        Make a lesson of it
      </button>
      <AskedTwice
        name="Let this line go"
        first="This takes the line off this device. Its figures stay."
        second="Sure? Nothing brings the line back."
        keep="Keep it"
        doIt={['Let it go', 'Yes, let it go']}
        done={letGo}
      />
    </main>
  );
}
