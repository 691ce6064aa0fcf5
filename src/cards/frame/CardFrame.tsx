import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import type { Verdict } from '../../practice/item.ts';
import type { play } from '../../sound/index.ts';
import { usePlay } from '../../sound/usePlay.ts';
import { keyName } from '../../theory/key.ts';
import type { Card, Explanation, FaceProps } from '../kind.ts';
import './CardFrame.css';

interface CardFrameProps extends Pick<
  FaceProps,
  'verdict' | 'explanation' | 'presented' | 'show' | 'next'
> {
  card: Card;
  /** Further promised attributes of the kind: `data-chord`, `data-strings`, … */
  attributes?: Record<`data-${string}`, string | undefined>;
  question: ComponentChildren;
  /** What stands under the question. */
  hint?: ComponentChildren;
  answers?: ComponentChildren;
  /** The row under the thumb until the verdict takes it. */
  foot?: ComponentChildren;
  /** Hears the right answer and what was answered, of a card that sounds them itself when the verdict comes. */
  hear?(): void;
  children: ComponentChildren;
}

/**
 * What every card looks like: the question on top, what is asked about in the middle, the answer under the thumb.
 * The verdict takes the question's place, so that nothing else moves when it comes; on a first meeting it stands there
 * from the start, as what is new.
 */
export function CardFrame(props: CardFrameProps) {
  const { card, verdict, explanation, show } = props;
  const isNew = props.presented === 'new';
  const playing = usePlay();
  const hear = props.hear ?? (() => explanation && hearBoth(explanation, playing));
  const lookedBackOn = useRef(verdict !== null).current;
  useEffect(() => {
    // Hearing the right answer after every card is what teaches the ear.
    if (verdict && !props.hear && (isNew || !lookedBackOn)) hear();
  }, [verdict]);
  return (
    <article
      class="card"
      data-kind={card.item.kind}
      data-item={card.item.id}
      data-seed={card.seed}
      data-key={keyName(card.key)}
      data-new={isNew ? '' : undefined}
      {...props.attributes}
    >
      {isNew ? <NewHeading explanation={explanation} /> : <Heading {...props} />}
      <div class="middle">{props.children}</div>
      <div class="answers">{props.answers}</div>
      <div class="foot">
        {verdict ? (
          <Onward {...props} hear={hear} byFrame={!props.hear} />
        ) : (
          <>
            {props.foot}
            {show && <ShowMe show={show} />}
          </>
        )}
      </div>
    </article>
  );
}

/** The question, until the verdict takes its place. */
function Heading({ verdict, explanation, presented, question, hint }: CardFrameProps) {
  return (
    <header>
      <div
        role="status"
        data-verdict={verdict ? wordOf(verdict) : undefined}
        class={verdict ? `why ${presented ? '' : wordOf(verdict)}` : ''}
      >
        {verdict && explanation && (
          <>
            <p class="question">
              {presented ? (
                <>Shown: {explanation.name ?? explanation.title}</>
              ) : (
                <>
                  <span class="unseen">{SAID[wordOf(verdict)]}</span>
                  {explanation.title}
                </>
              )}
            </p>
            <Reason explanation={explanation} />
          </>
        )}
      </div>
      {!verdict && (
        <>
          <h1 class="question" tabIndex={-1}>
            {question}
          </h1>
          {hint && <p class="soft">{hint}</p>}
        </>
      )}
    </header>
  );
}

/** A verdict in the words of `data-verdict`. */
function wordOf({ right, near }: Verdict) {
  if (near) return 'near';
  return right ? 'right' : 'wrong';
}

const SAID = { right: 'Right. ', near: 'Near. ', wrong: 'Wrong. ' };

/** What is met for the first time: its name, and why it is called so. */
function NewHeading({ explanation }: Pick<CardFrameProps, 'explanation'>) {
  if (!explanation) return null;
  return (
    <header id={NEW} class="why">
      <h1 class="question" tabIndex={-1}>
        New: {explanation.name ?? explanation.title}
      </h1>
      <Reason explanation={explanation} />
    </header>
  );
}

/** One card is on the screen at a time. What is new is read out with the button that goes on, which has the focus. */
const NEW = 'what-is-new';

function Reason({ explanation: { sentence, detail } }: { explanation: Explanation }) {
  return (
    <>
      <p class="sentence">{sentence}</p>
      {detail && <p class="soft">{detail}</p>}
    </>
  );
}

/** For who does not know: better than a guess, which would be taken for what they think. */
function ShowMe({ show }: { show(): void }) {
  return (
    <button type="button" class="button quiet" data-do="show" onClick={show}>
      Show me
    </button>
  );
}

interface OnwardProps extends Pick<CardFrameProps, 'explanation' | 'presented' | 'next'> {
  hear(): void;
  /** Whether the frame itself sounds the answer, of a card that is not heard. */
  byFrame: boolean;
}

/** After the verdict: to hear it once more, and to go on. */
function Onward({ explanation, presented, next, hear, byFrame }: OnwardProps) {
  return (
    <div class="buttons">
      <button type="button" class="button" data-do={byFrame ? undefined : 'hear'} onClick={hear}>
        {explanation?.otherSound ? 'Hear both' : 'Hear it'}
      </button>
      <button
        type="button"
        class="button main"
        data-do="next"
        aria-describedby={presented === 'new' ? NEW : undefined}
        onClick={next}
      >
        Next
      </button>
    </div>
  );
}

/** The right answer, then, after it, what was answered instead. */
function hearBoth({ sound, otherSound }: Explanation, by: typeof play): void {
  by(sound, { onEnd: () => otherSound && by(otherSound) });
}
