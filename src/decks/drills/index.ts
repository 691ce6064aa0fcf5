import * as v from 'valibot';
import type { Drill, Drills } from '../deck.ts';
import { DECLARED, KIND_NAMES, type FormName, type KindName } from '../kinds.ts';
import { ear } from './ear.ts';
import type { DrillForm, Extent } from './form.ts';
import { neck } from './neck.ts';
import { phrase } from './phrase.ts';

/** Every form of drill. */
const FORMS = { neck, ear, phrase } satisfies {
  [F in FormName]: Pick<DrillForm<Drills[F]>, 'write' | 'misfit'>;
};

/** What a document may say of a drill, of any form. */
export function drillSchema(extent: Extent = 'whole') {
  const forms = [neck.schema(extent), ear.schema(extent), phrase.schema(extent)];
  const names = KIND_NAMES.map((name) => `"${name}"`).join(', ');
  return v.variant('kind', forms, `give a kind: ${names}`);
}
export type WrittenDrill = v.InferInput<ReturnType<typeof drillSchema>>;

/** The form that a kind's drills have. */
export function formOf(kind: KindName): DrillForm<Drill, WrittenDrill> {
  return FORMS[DECLARED[kind].drill];
}
