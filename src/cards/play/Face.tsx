import { Hops } from '../../parts/Hops.tsx';
import { Neck, type NeckDot } from '../../parts/Neck.tsx';
import { midiAt, placeLabel } from '../../neck/place.ts';
import { placeText } from '../../neck/placeText.ts';
import { pluck } from '../../sound/index.ts';
import { usePlay } from '../../sound/usePlay.ts';
import { degreeInKey } from '../arpeggio/degreeSteps.ts';
import { chordLabel, noteLabel } from '../../theory/naming.ts';
import { framed } from '../arpeggio/arpeggio.ts';
import { CardFrame } from '../frame/CardFrame.tsx';
import type { FaceProps } from '../kind.ts';
import { lineSound } from '../playing/explain.ts';
import { Heard } from '../playing/Heard.tsx';
import { PlayingFoot } from '../playing/PlayingFoot.tsx';
import { usePlaying, type Follow } from '../playing/usePlaying.ts';
import type { PlayCard } from './ask.ts';
import { tempoHint, WAY_WORDS } from './words.ts';

/** An arpeggio as dots, or by its name alone; what is heard of it lights up. */
export function Face(props: FaceProps<PlayCard>) {
  const { card, verdict, explanation, shown, guitar } = props;
  const { chord, item, tempo, instrument, key, line } = card;
  const follow = usePlaying({ ...props, quiet: true, countIn: tempo !== null });
  const way = item.way ? WAY_WORDS[item.way] : 'as the phrase has it';
  const isShown = explanation !== null || !card.named;
  return (
    <CardFrame
      {...props}
      attributes={{
        'data-chord': chord.symbol,
        'data-strings': item.stringSet.join(' '),
        'data-frets': item.frets.join('-'),
        'data-tempo': tempo === null ? undefined : String(tempo),
      }}
      question={`Play ${chordLabel(chord, shown.naming)} ${way}`}
      hint={`${degreeInKey(chord, key, shown)} · from ${placeLabel(line[0]!)}${tempoHint(item)}`}
      answers={
        <Heard
          {...{ card, shown }}
          performance={follow.performance}
          lit={follow.lit}
          told={verdict !== null}
        />
      }
      foot={
        guitar ? (
          <PlayingFoot
            {...props}
            follow={follow}
            again={tempo === null ? 'Begin again' : 'Count in again'}
          />
        ) : (
          <Unheard card={card} />
        )
      }
    >
      {follow.count !== null && <p class="stand">{follow.count + 1}</p>}
      {follow.count === null && isShown && (
        <Neck
          instrument={instrument}
          musicKey={key}
          naming={shown.naming}
          frets={framed(item.frets, instrument)}
          label="Neck with an arpeggio on it"
          dots={explanation?.dots ?? dotsOf(card, follow)}
          {...(verdict && { tap: (place) => pluck(midiAt(instrument, place), place.string) })}
        />
      )}
      {follow.count === null && !isShown && <ByName {...props} />}
    </CardFrame>
  );
}

/** Plain dots, those of a phrase with the order in which they come; a dot that was heard gets its name and colour. */
function dotsOf({ line, item }: PlayCard, { lit, performance }: Follow): NeckDot[] {
  const dots = new Map<string, NeckDot>();
  line.forEach(({ string, fret, ...named }, i) => {
    const at = placeText({ string, fret });
    const settled = performance?.notes[i];
    const isHeard = settled ? settled.verdict === 'right' : lit.has(i);
    const before = dots.get(at);
    const order = before?.text ? `${before.text} ${i + 1}` : String(i + 1);
    const dot = { string, fret, ...(isHeard ? named : before) };
    dots.set(at, item.way === null ? { ...dot, text: order } : dot);
  });
  return [...dots.values()];
}

/** The arpeggio's name, to be read from afar; of a phrase the notes and how they rise and fall. */
function ByName({ card, shown }: Pick<FaceProps<PlayCard>, 'card' | 'shown'>) {
  const { chord, item, notes, key } = card;
  return (
    <div>
      <p class="stand music">{chordLabel(chord, shown.naming)}</p>
      {item.way === null && (
        <>
          <p class="soft music">
            {notes.map(({ name }) => noteLabel(name, shown.naming, key)).join(' ')}
          </p>
          <Hops heights={notes.map(({ midi }) => midi)} />
        </>
      )}
    </div>
  );
}

/** Without a guitar in hand: what it is about, and how it sounds. */
function Unheard({ card }: { card: PlayCard }) {
  const play = usePlay();
  return (
    <div class="buttons">
      <p class="soft">This card listens to the guitar in your hand.</p>
      <button
        type="button"
        class="button"
        data-do="hear"
        onClick={() => play(lineSound(card, card.line))}
      >
        Hear it
      </button>
    </div>
  );
}
