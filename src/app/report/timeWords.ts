/** What a report tells of time, in words. */
import type { FigureFacts, MinuteFacts } from '../../decks/reportTime.ts';
import type { Report } from '../../decks/report.ts';
import { runsScales } from '../../practice/nextInTime.ts';
import { counted, percent } from '../figures.ts';
import { spreadWords } from '../measured.ts';

const PLACES = ['first', 'second', 'third', 'fourth'];

const nameOf = ({ figure }: Pick<FigureFacts, 'figure'>): string =>
  figure === 'phrase' ? 'the phrase’s rhythm' : figure;

/** `Triplets: even up to 84; 12 % of a step last time, the second note 20 ms early, runs ahead of the click.` */
export function figureFactsWords(facts: FigureFacts): string {
  const { tempo, spread } = facts;
  const name = nameOf(facts);
  const fastest = tempo === null ? 'not yet even at any tempo' : `even up to ♩ = ${tempo}`;
  const last = [
    ...(spread === null ? [] : [`${percent(spread)} of a step last time`]),
    ...troubles(facts),
  ];
  const more = last.length === 0 ? '' : `; ${last.join(', ')}`;
  return `${name.charAt(0).toUpperCase()}${name.slice(1)}: ${fastest}${more}.`;
}

function troubles({ drift, limps }: FigureFacts): string[] {
  return [
    ...(limps ? [limpWords(limps)] : []),
    ...(drift === null ? [] : [drift < 0 ? 'rushes' : 'drags']),
  ];
}

/** `the second note 20 ms early` */
function limpWords({ place, late }: NonNullable<FigureFacts['limps']>): string {
  const ms = Math.round(1000 * Math.abs(late));
  return `the ${PLACES[place - 1]} note ${ms} ms ${late < 0 ? 'early' : 'late'}`;
}

/** `6 free minutes: 32 % leaps, runs of up to 7 steps, 3 of 7 arpeggios, 14 cm along the neck, ± 24 ms around the beat.` */
export function minuteWords({ count, leaping, run, outlined, reach, spread }: MinuteFacts): string {
  const facts = [
    `${percent(leaping)} leaps`,
    `the longest run ${counted(Math.round(run), 'step')}`,
    `${outlined} of 7 arpeggios`,
    `${Math.round(reach / 10)} cm along the neck`,
    `${spreadWords(spread)} around the beat`,
  ];
  return `${counted(count, 'free minute')}, of the last ones the mean: ${facts.join(', ')}.`;
}

/** What a teacher would hear first, in a few words each: `rushes triplets`, `second of triplets limps`, `runs scales`. */
export function needsInTime(report: Pick<Report, 'time'>): string[] {
  const needs = report.time.figures.flatMap((facts) => [
    ...(facts.drift !== null && facts.drift < 0 ? [`rushes ${nameOf(facts)}`] : []),
    ...(facts.limps ? [`${PLACES[facts.limps.place - 1]} note of ${nameOf(facts)} limps`] : []),
  ]);
  return runsScales(report) ? [...needs, 'runs scales'] : needs;
}
