import { useMemo } from 'preact/hooks';
import { KINDS, wantsGuitar } from '../../cards/index.ts';
import { KIND_NAMES, type KindName } from '../../decks/deck.ts';
import { isTogether, withKinds } from '../../making/draft.ts';
import { nothingIn } from '../../making/fitting.ts';
import { Choice, Choices } from '../../parts/Choices.tsx';
import { listed } from '../../parts/english.ts';
import { change, draft } from './kept/openDraft.ts';

/** Which kinds of card the lesson asks; one that would ask nothing is grey, and why is said. */
export function CardChoice() {
  const nothing = useNothing();
  const { drills } = draft.value;
  const apart = drills.length > drills.filter(isTogether).length;
  return (
    <>
      <Kinds legend="Cards" guitar={false} nothing={nothing} />
      <Kinds legend="With the guitar" guitar nothing={nothing} />
      {apart && <p class="soft">Drills with choices of their own come beside these.</p>}
    </>
  );
}

type Nothing = ReadonlyMap<KindName, string>;

/** Why kinds of card would ask nothing. What is written about the lesson changes with every letter, and none of this. */
function useNothing(): Nothing {
  const made = draft.value;
  const { instrument, key, degrees, sizes, strings, frets, phrases } = made;
  return useMemo(() => {
    const nothing = nothingIn(made);
    const whys = KIND_NAMES.map((kind) => [kind, nothing(kind)] as const);
    return new Map(whys.flatMap(([kind, why]) => (why === null ? [] : [[kind, why]])));
  }, [instrument, key, degrees, sizes, strings, frets, phrases]);
}

interface KindsProps {
  legend: string;
  guitar: boolean;
  nothing: Nothing;
}

function Kinds({ legend, guitar, nothing }: KindsProps) {
  const { drills } = draft.value;
  const chosen = drills.filter(isTogether);
  const kinds = KIND_NAMES.filter((kind) => wantsGuitar(kind) === guitar);
  const choose = (kind: KindName, on: boolean) => {
    const next = on ? [...chosen, kind] : chosen.filter((other) => other !== kind);
    change({ drills: withKinds(drills, next) });
  };
  return (
    <div>
      <Choices legend={legend}>
        {kinds.map((kind) => (
          <Choice
            key={kind}
            label={KINDS[kind].words.drills}
            checked={chosen.includes(kind)}
            idle={nothing.has(kind)}
            disabled={nothing.has(kind) && !chosen.includes(kind)}
            change={(on) => choose(kind, on)}
          />
        ))}
      </Choices>
      <Why kinds={kinds} nothing={nothing} />
    </div>
  );
}

/** A sentence for each reason, with the kinds that it holds for. */
function Why({ kinds, nothing }: Pick<KindsProps, 'nothing'> & { kinds: readonly KindName[] }) {
  const reasons = [...new Set(kinds.flatMap((kind) => nothing.get(kind) ?? []))];
  return (
    <>
      {reasons.map((reason) => {
        const its = kinds.filter((kind) => nothing.get(kind) === reason);
        return (
          <p key={reason} class="soft why-grey">
            {sentence(`${listed(its.map((kind) => KINDS[kind].words.brief))}: ${reason}.`)}
          </p>
        );
      })}
    </>
  );
}

const sentence = (words: string) => words.charAt(0).toUpperCase() + words.slice(1);
