import { useState } from 'preact/hooks';
import { degreeSteps } from '../../cards/arpeggio/degreeSteps.ts';
import { arpeggioSound, chordNear } from '../../cards/frame/sounds.ts';
import { KINDS } from '../../cards/index.ts';
import { openMidi } from '../../neck/instrument.ts';
import { Facts } from '../../parts/Facts.tsx';
import { StairHops } from '../../parts/StairHops.tsx';
import { confusions, type Confusion } from '../../practice/confusion.ts';
import type { Item } from '../../practice/item.ts';
import { usePlay } from '../../sound/usePlay.ts';
import { chordOn } from '../../theory/chord.ts';
import { numeralLabel } from '../../theory/naming.ts';
import { parentKey } from '../../theory/scale.ts';
import { memory, settings, type Lesson } from '../state.ts';

/** So many pairs are drawn and can be heard; all are in the table. */
const SHOWN = 5;

const times = (count: number) => (count === 1 ? 'once' : count === 2 ? 'twice' : `${count} times`);

/** What was taken for what: hops on the staircase, and pairs that sound one after the other. */
export function TakenFor({ lesson, items }: { lesson: Lesson; items: readonly Item[] }) {
  const { key, instrument } = lesson.deck;
  const [lit, setLit] = useState<number | null>(null);
  const play = usePlay();
  const pairs = confusions(items, memory.value.of);
  const shown = pairs.slice(0, SHOWN);
  const numeral = (degree: number, { size }: Confusion) =>
    numeralLabel(chordOn(parentKey(key), degree, size));

  const hearBoth = (pair: Confusion, index: number) => {
    setLit(index);
    const middle = Math.min(...openMidi(instrument)) + 17;
    const [asked, answered] = [pair.degree, pair.takenFor].map((degree) =>
      arpeggioSound(chordNear(chordOn(parentKey(key), degree, pair.size), middle)),
    );
    play(asked!, { onEnd: () => play(answered!) });
  };

  return (
    <section class="sheet">
      <h2>Taken for another</h2>
      {shown.length === 0 ? (
        <p class="soft">So far no arpeggio was taken for another.</p>
      ) : (
        <>
          <StairHops
            steps={degreeSteps(key, 'triad', { ...settings.value, chordNames: false })}
            hops={shown.map((pair) => ({
              from: pair.degree,
              to: pair.takenFor,
              share: pair.times / shown[0]!.times,
            }))}
            lit={lit}
            label="What was taken for what, from ring to dot"
          />
          <ul class="pairs">
            {shown.map((pair, index) => (
              <li key={`${pair.kind} ${pair.size} ${pair.degree} ${pair.takenFor}`}>
                <button
                  type="button"
                  class="button"
                  data-do="hear"
                  onClick={() => hearBoth(pair, index)}
                >
                  <span>
                    <b class="music">{numeral(pair.degree, pair)}</b> {KINDS[pair.kind].words.taken}{' '}
                    as <b class="music">{numeral(pair.takenFor, pair)}</b>, {times(pair.times)}
                  </span>
                  <span class="soft">Hear both</span>
                </button>
              </li>
            ))}
          </ul>
          <Facts
            caption="What was taken for what"
            head={['asked', 'answered', 'how', 'times']}
            rows={pairs.map((pair) => [
              numeral(pair.degree, pair),
              numeral(pair.takenFor, pair),
              KINDS[pair.kind].words.taken!,
              String(pair.times),
            ])}
          />
        </>
      )}
    </section>
  );
}
