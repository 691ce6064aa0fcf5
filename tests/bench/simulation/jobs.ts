/** What is simulated, cut into jobs that can be done in any order and side by side: plain data in, plain data out. */
import { aheadOf } from './ahead.ts';
import { type ClassGain, marksFromAClass } from './class.ts';
import { count, emptyTally, type Tally } from './forecasts.ts';
import {
  atRandom,
  boxes,
  dueOrder,
  type MakePolicy,
  oracle,
  ours,
  roundRobin,
  roundRobinOverKinds,
  roundRobinShown,
} from './policies.ts';
import { type Outcome, play } from './run.ts';
import { allOrNone, type MakeHidden, multiscale, powerLaw, weakPowerLaw } from './students.ts';
import { deckOf150 } from './world.ts';

export const laws: Record<string, MakeHidden> = {
  'power law': powerLaw,
  'weak power law': weakPowerLaw,
  multiscale,
  'all or none': allOrNone,
};

export const policies: Record<string, MakePolicy> = {
  'in turn': roundRobin,
  'over kinds': roundRobinOverKinds,
  'shown first': roundRobinShown,
  random: atRandom,
  boxes,
  'due order': dueOrder,
  ours,
  oracle,
};

/** One student under one rule, or what a class's marks bring students of one law, or how true is what is foretold of them. */
export type Job =
  | {
      readonly part: 'rules';
      readonly law: string;
      readonly policy: string;
      readonly minutes: number;
      readonly seed: number;
      readonly spread: number;
    }
  | (OfMany & { readonly part: 'class' })
  | (OfMany & { readonly part: 'ahead' });

/** What so many students of one law are drawn from. */
interface OfMany {
  readonly law: string;
  readonly seed: number;
  readonly spread: number;
  readonly count: number;
}

/** What a student under a rule came to; what was shown on the way, where the rule is the app's. */
export interface Played extends Pick<Outcome, 'byKind' | 'known' | 'minutes' | 'firstWeek'> {
  readonly tally: Tally | null;
}

export type Done = Played | ClassGain | string;

const items = deckOf150();

export function doJob(job: Job): Done {
  const make = laws[job.law]!;
  if (job.part === 'class') return marksFromAClass(make, items, job);
  if (job.part === 'ahead') return aheadOf(job.law, make, items, job);
  const tally = job.policy === 'ours' ? emptyTally() : null;
  const { byKind, known, minutes, firstWeek } = play({
    ...job,
    make,
    policy: policies[job.policy]!,
    items,
    watch: (day, hidden, memory) => tally && count(tally, items, day, hidden, memory),
  });
  return { byKind, known, minutes, firstWeek, tally };
}
