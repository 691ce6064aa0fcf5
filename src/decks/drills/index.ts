import * as v from 'valibot';
import type { Drill, Drills } from '../deck.ts';
import { DECLARED, KIND_NAMES, type FormName, type KindName } from '../kinds.ts';
import { ear } from './ear.ts';
import { echoed, echoedByEar, echoedFromPhrases } from './echoed.ts';
import type { DrillForm, Extent } from './drillForm.ts';
import { neck } from './neck.ts';
import { phrase } from './phrase.ts';
import { played, playedFromPhrases, playedOnNeck } from './played.ts';
import { time } from './time.ts';

/** What a document may say of a drill, by its form: of two, that of chords before that of phrases. */
const SCHEMAS = {
  neck: [neck.schema],
  ear: [ear.schema],
  phrase: [phrase.schema],
  played: [playedOnNeck, playedFromPhrases],
  echoed: [echoedByEar, echoedFromPhrases],
  time: [time.schema],
} satisfies Record<FormName, readonly unknown[]>;
type Written = { [F in FormName]: v.InferInput<ReturnType<(typeof SCHEMAS)[F][number]>> };

/** Every form of drill. */
const FORMS: { readonly [F in FormName]: DrillForm<Drills[F], Written[F]> } = {
  neck,
  ear,
  phrase,
  played,
  echoed,
  time,
};

/** What a document may say of a drill, of any form. */
export function drillSchema(extent: Extent = 'whole') {
  const all = Object.values(SCHEMAS).flatMap((some) => some.map((schema) => schema(extent)));
  const names = KIND_NAMES.map((name) => `"${name}"`).join(', ');
  const says = `give a kind: ${names}`;
  // Of a kind of two forms that fit neither, the fault is told of the first.
  const chordsFirst = v.variant('kind', all, says);
  const phrasesFirst = v.variant('kind', all.toReversed(), says);
  return v.lazy((drill) => (hasPhrases(drill) ? phrasesFirst : chordsFirst));
}

function hasPhrases(drill: unknown): boolean {
  return typeof drill === 'object' && drill !== null && 'phrases' in drill;
}

/** The form that a kind's drills have: to be handed drills of that kind alone. */
export function drillFormOf(kind: KindName): DrillForm<Drill, Written[FormName]> {
  return FORMS[DECLARED[kind].drill];
}
