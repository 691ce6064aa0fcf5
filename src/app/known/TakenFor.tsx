import { useState } from 'preact/hooks';
import { degreeSteps } from '../../cards/arpeggio/degreeSteps.ts';
import { arpeggioSound, chordNear } from '../../cards/frame/sounds.ts';
import type { Deck } from '../../decks/deck.ts';
import { KINDS } from '../../cards/index.ts';
import { openMidi } from '../../neck/instrument.ts';
import { Facts } from '../../parts/Facts.tsx';
import { StairHops } from '../../parts/StairHops.tsx';
import { confusions, type Confusion } from '../../practice/confusions.ts';
import type { Item } from '../../practice/item.ts';
import { usePlay } from '../../sound/usePlay.ts';
import { chordOn } from '../../theory/chord.ts';
import type { Key } from '../../theory/key.ts';
import { numeralLabel } from '../../theory/naming.ts';
import { parentKey } from '../../theory/scale.ts';
import { timesWords } from '../measured.ts';
import { memory, settings, type Lesson } from '../state.ts';

/** So many pairs are drawn and can be heard; all are in the table. */
const SHOWN = 5;

/** What was taken for what: hops on the staircase, and pairs that sound one after the other. */
export function TakenFor({ lesson, items }: { lesson: Lesson; items: readonly Item[] }) {
  const { key } = lesson.deck;
  const pairs = confusions(items, memory.value.of);
  return (
    <section class="sheet">
      <h2>Taken for another</h2>
      {pairs.length === 0 ? (
        <p class="soft">So far no arpeggio was taken for another.</p>
      ) : (
        <>
          <Pairs deck={lesson.deck} pairs={pairs.slice(0, SHOWN)} />
          <Facts
            caption="What was taken for what"
            head={['asked', 'answered', 'how', 'times']}
            rows={pairs.map((pair) => [
              numeralIn(key, pair, pair.degree),
              numeralIn(key, pair, pair.takenFor),
              KINDS[pair.kind].words.taken!,
              String(pair.times),
            ])}
          />
        </>
      )}
    </section>
  );
}

interface PairsProps {
  deck: Deck;
  /** The most frequent first. */
  pairs: readonly Confusion[];
}

function Pairs({ deck, pairs }: PairsProps) {
  const { key } = deck;
  const [lit, setLit] = useState<number | null>(null);
  const play = usePlay();
  const hearBoth = (pair: Confusion, index: number) => {
    setLit(index);
    const [asked, answered] = soundsOf(deck, pair);
    play(asked, { onEnd: () => play(answered) });
  };
  return (
    <>
      <StairHops
        steps={degreeSteps(key, 'triad', { ...settings.value, chordNames: false })}
        hops={pairs.map(({ degree, takenFor, times }) => ({
          from: degree,
          to: takenFor,
          share: times / pairs[0]!.times,
        }))}
        lit={lit}
        label="What was taken for what, from ring to dot"
      />
      <ul class="pairs">
        {pairs.map((pair, index) => (
          <li key={`${pair.kind} ${pair.size} ${pair.degree} ${pair.takenFor}`}>
            <button
              type="button"
              class="button"
              data-do="hear"
              onClick={() => hearBoth(pair, index)}
            >
              <span>
                <b class="music">{numeralIn(key, pair, pair.degree)}</b>{' '}
                {KINDS[pair.kind].words.taken} as{' '}
                <b class="music">{numeralIn(key, pair, pair.takenFor)}</b>, {timesWords(pair.times)}
              </span>
              <span class="soft">Hear both</span>
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}

function numeralIn(key: Key, { size }: Confusion, degree: number): string {
  return numeralLabel(chordOn(parentKey(key), degree, size));
}

/** What was asked and what was answered, in the middle of the instrument. */
function soundsOf({ key, instrument }: Deck, { degree, takenFor, size }: Confusion) {
  const middle = Math.min(...openMidi(instrument)) + 17;
  const sound = (of: number) => arpeggioSound(chordNear(chordOn(parentKey(key), of, size), middle));
  return [sound(degree), sound(takenFor)] as const;
}
