/**
 * The report: what a student sends back between two lessons, in a link that a message carries. It names nobody unless
 * a name was typed.
 *
 *     text, UTF-8 (the question, the name, either may be missing) · a zero byte · bits:
 *     deck 32 · sender 32 · day 16 · minute 11 · practised 28 · asked 17 · right 17
 *     kinds 4 (3 in version 1), for each: median seconds 6
 *     items 12 · how fine 2 · how they lie 33 · then, packed by those odds, for each item:
 *     marked, unseen, and unless that: stability, days, missed; where missed: misses, taken for; else: slow
 *
 * An item takes some 13 bits as a log leaves them. Where a link would pass 500 characters, stability and days are told
 * in half as many steps, or a quarter: so 150 items fit, whatever is told of them, with a question, a name and marks.
 */
import { bitReader, bitWriter } from './bits.ts';
import type { BitReader, BitWriter } from './bits.ts';
import { fnv64 } from './bytes.ts';
import { KIND_NAMES } from './deck.ts';
import type { KindName } from './deck.ts';
import { altered, openLink, sealLink } from './envelope.ts';
import type { Fault } from './envelope.ts';
import { NOT_PLAIN, PLAIN_LINES } from './plain.ts';
import { oddsReader, oddsWriter } from './odds.ts';
import { chanceOf, distributionOf, putDistribution, takeDistribution } from './report-odds.ts';
import type { Chances } from './report-odds.ts';

/** What a report tells of one item that was seen. */
export interface ItemFacts {
  /** Days until recall has faded to .9; kept within 8 % from .03 to 400 (17 or 42 % where the link would be too long). */
  readonly stability: number;
  /** Days since the last answer; kept alike, of half a day more than they are, up to 60. */
  readonly days: number;
  /** Whether it was answered slowly for this student; told only of items not missed lately. */
  readonly slow: boolean;
  /** Wrong ones of the last answers, up to 3. */
  readonly misses: number;
  /** The degree, 1 to 7, that it was most often taken for in those; null where it was no single one. */
  readonly takenFor: number | null;
}

/** What a student sends back. */
export interface Report {
  /** Which deck it is on, as `deckMark` gives it. */
  readonly deck: number;
  /** A number that the student's device drew once, 32 bits: tells one student's reports from another's. */
  readonly sender: number;
  /** When it was made: the local day, counted from 1 January 1970, and the minute of that day. */
  readonly day: number;
  readonly minute: number;
  /** Whether each of the last 28 days had practice in it, the oldest first, `day` last. */
  readonly practised: readonly boolean[];
  /** Answers on this deck, and how many were right; up to 131,071. */
  readonly asked: number;
  readonly right: number;
  /** Median seconds of a right answer, by kind; kept within 4 % from .5 to 60. */
  readonly seconds: Partial<Readonly<Record<KindName, number>>>;
  /** The deck's items in their order, null where unseen; up to 4,095. */
  readonly items: readonly (ItemFacts | null)[];
  /** Items that the student marked to ask about, up to 15: their places in `items`, ascending. */
  readonly marked: readonly number[];
  /** A question to the teacher, up to 60 characters, and a name, up to 40; may be empty. */
  readonly question: string;
  readonly name: string;
}

/** How much a report may hold: characters, items, marked items, answers. */
export const MOST_TOLD = { question: 60, name: 40, items: 4095, marked: 15, count: 131_071 };

const VERSION = 2;
const PRACTISED = 28;
const NO_SECONDS = 63;
const MOST_MISSES = 3;
const NAME = '\u001f';

/** From the finest: of days since, half a day is added, so that today is told from yesterday. */
const FINENESS = [1, 2, 4].map((coarser) => ({
  stability: logSteps(0.03, 400, 64 / coarser),
  days: logSteps(0.5, 60.5, 32 / coarser),
}));
type Fineness = (typeof FINENESS)[number];

/** What a link should not pass, characters. */
const LONG = 500;

const seconds = logSteps(0.5, 60, NO_SECONDS);

/** The 32 bits by which a report names its deck: `deckId`'s digits, hashed and folded as the hash's authors advise. */
export function deckMark(deckId: string): number {
  return fold32(deckId);
}

/** The 32 bits by which a report tells its sender: of the device's random id, hashed, so that it cannot be told back. */
export function senderMark(device: string): number {
  return fold32(device);
}

function fold32(text: string): number {
  const hash = fnv64(new TextEncoder().encode(text));
  return Number((hash >> 32n) ^ (hash & 0xffffffffn));
}

/**
 * The link of a report.
 *
 * @param base the page's address, up to `#`
 * @throws RangeError with a sentence where the report holds more than a link carries
 */
export function reportLink(report: Report, base: string): string {
  const fault = excess(report);
  if (fault !== null) throw new RangeError(fault);
  const sealed = (fine: number) => sealLink('report', base, VERSION, pack(report, fine));
  let link = sealed(0);
  for (let fine = 1; fine < FINENESS.length && link.length > LONG; fine++) link = sealed(fine);
  return link;
}

function pack(report: Report, fine: number): Uint8Array {
  const words = report.name === '' ? report.question : `${report.question}${NAME}${report.name}`;
  const text = new TextEncoder().encode(`${words}\0`);
  const bits = bitWriter();
  putHead(bits, report);
  bits.put(report.items.length, 12);
  bits.put(fine, 2);
  const scales = FINENESS[fine]!;
  const items = report.items.map((item, i) => stepsOf(item, report.marked.includes(i), scales));
  const distribution = distributionOf(items, countsOf(scales));
  putDistribution(bits, distribution);
  const packed = packItems(items, chanceOf(distribution, countsOf(scales)));
  return Uint8Array.of(...text, ...bits.bytes(), ...packed);
}

/**
 * The report that a link holds and the link's own letters, or what is wrong with it and what to do.
 *
 * @param link the whole address, the part after `#`, or the payload alone, as pasted from a message
 */
export function readReport(
  link: string,
): { readonly report: Report; readonly payload: string } | Fault {
  const opened = openLink('report', VERSION, link);
  if ('fault' in opened) return opened;
  const end = opened.body.indexOf(0);
  const bits = bitReader(opened.body.subarray(end + 1));
  const words = new TextDecoder('utf-8', { ignoreBOM: true }).decode(opened.body.subarray(0, end));
  const [question = '', name = '', ...more] = words.split(NAME);

  const head = takeHead(bits, opened.version);
  const count = bits.take(12);
  const scales = FINENESS[bits.take(2)] ?? FINENESS[0]!;
  const chances = chanceOf(takeDistribution(bits), countsOf(scales));
  const told = unpackItems(bits.rest(), count, chances, scales);
  if (end < 0 || more.length > 0 || told === null) return { fault: altered('report') };
  const report: Report = { ...head, ...told, question, name };
  return excess(report) === null
    ? { report, payload: opened.payload }
    : { fault: altered('report') };
}

function putHead(bits: BitWriter, report: Report): void {
  bits.put(report.deck, 32);
  bits.put(report.sender, 32);
  bits.put(report.day, 16);
  bits.put(report.minute, 11);
  for (const practised of report.practised) bits.put(Number(practised), 1);
  bits.put(report.asked, 17);
  bits.put(report.right, 17);
  bits.put(KIND_NAMES.length, 4);
  for (const kind of KIND_NAMES) {
    const median = report.seconds[kind];
    bits.put(median === undefined ? NO_SECONDS : seconds.step(median), 6);
  }
}

function takeHead(bits: BitReader, version: number) {
  const [deck, sender, day, minute] = [bits.take(32), bits.take(32), bits.take(16), bits.take(11)];
  const practised = repeat(PRACTISED, () => bits.take(1) === 1);
  const [asked, right] = [bits.take(17), bits.take(17)];
  const medians = repeat(bits.take(version === 1 ? 3 : 4), () => bits.take(6));
  const known = KIND_NAMES.flatMap((kind, i): [KindName, number][] => {
    const step = medians[i] ?? NO_SECONDS;
    return step === NO_SECONDS ? [] : [[kind, seconds.value(step)]];
  });
  return { deck, sender, day, minute, practised, asked, right, seconds: Object.fromEntries(known) };
}

/** An item as whole numbers: steps of stability and days; `slow` 0 where missed. Null where unseen. */
interface Seen {
  readonly stability: number;
  readonly days: number;
  readonly slow: number;
  readonly misses: number;
  readonly takenFor: number;
}

/** What is told of an item, rounded. */
export interface ItemSteps {
  readonly marked: boolean;
  readonly seen: Seen | null;
}

const countsOf = ({ stability, days }: Fineness) => ({
  stability: stability.count,
  days: days.count,
});

function stepsOf(item: ItemFacts | null, marked: boolean, scales: Fineness): ItemSteps {
  if (item === null) return { marked, seen: null };
  const misses = Math.min(MOST_MISSES, item.misses);
  const seen = {
    stability: scales.stability.step(item.stability),
    days: scales.days.step(0.5 + item.days),
    slow: misses === 0 ? Number(item.slow) : 0,
    misses,
    takenFor: misses === 0 ? 0 : (item.takenFor ?? 0),
  };
  return { marked, seen };
}

function packItems(items: readonly ItemSteps[], chances: Chances): Uint8Array {
  const out = oddsWriter();
  for (const { marked, seen } of items) {
    out.put(Number(marked), chances.marked);
    out.put(Number(seen === null), chances.unseen);
    if (seen === null) continue;
    out.put(seen.stability, chances.stability);
    out.put(seen.days, chances.days);
    out.put(Number(seen.misses > 0), chances.missed);
    if (seen.misses === 0) {
      out.put(seen.slow, chances.slow);
      continue;
    }
    out.put(seen.misses - 1, chances.misses);
    out.put(Number(seen.takenFor > 0), chances.taken);
    if (seen.takenFor > 0) out.put(seen.takenFor - 1, chances.takenFor);
  }
  return out.bytes();
}

/**
 * Inverts `stepsOf` and `packItems`; null where the bytes hold less or more than so many items. In one go: a class's
 * reports are many, and what would be made in between took half the time.
 */
function unpackItems(bytes: Uint8Array, count: number, chances: Chances, scales: Fineness) {
  const from = oddsReader(bytes);
  const marked: number[] = [];
  const items = repeat(count, (place): ItemFacts | null => {
    if (from.take(chances.marked) === 1) marked.push(place);
    if (from.take(chances.unseen) === 1) return null;
    const stability = scales.stability.value(from.take(chances.stability));
    const days = scales.days.value(from.take(chances.days)) - 0.5;
    if (from.take(chances.missed) === 0) {
      const slow = from.take(chances.slow) === 1;
      return { stability, days, slow, misses: 0, takenFor: null };
    }
    const misses = 1 + from.take(chances.misses);
    const takenFor = from.take(chances.taken) === 1 ? 1 + from.take(chances.takenFor) : null;
    return { stability, days, slow: false, misses, takenFor };
  });
  return from.atEnd() ? { items, marked } : null;
}

/** What a link cannot carry of a report, as a sentence; null where it carries all. */
function excess({ question, name, items, marked, asked, right, practised, minute }: Report) {
  const most = MOST_TOLD;
  if (question.length > most.question) {
    return `Shorten the question to ${most.question} characters.`;
  }
  if (name.length > most.name) return `Shorten the name to ${most.name} characters.`;
  if (!PLAIN_LINES.test(question) || !PLAIN_LINES.test(name)) {
    return `Write question and name as plain text: ${NOT_PLAIN}.`;
  }
  if (items.length > most.items) return `A report carries at most ${most.items} items.`;
  if (marked.length > most.marked) return `Mark at most ${most.marked} cards.`;
  if (marked.some((item) => item >= items.length)) return 'Mark cards of this lesson only.';
  if (asked > most.count || right > asked)
    return 'A report counts right answers among its answers.';
  if (practised.length !== PRACTISED || minute >= 1440)
    return 'A report covers 28 days to a minute.';
  return null;
}

/** `count` steps from one value to another, each the same factor above the one before it. */
function logSteps(lowest: number, highest: number, count: number) {
  const factor = Math.log(highest / lowest) / (count - 1);
  const values = Array.from({ length: count }, (_, step) => lowest * Math.exp(factor * step));
  return {
    count,
    step: (value: number) =>
      Math.max(0, Math.min(count - 1, Math.round(Math.log(value / lowest) / factor))),
    value: (step: number) => values[Math.min(count - 1, step)]!,
  };
}

function repeat<T>(times: number, make: (i: number) => T): T[] {
  const made: T[] = [];
  for (let i = 0; i < times; i++) made.push(make(i));
  return made;
}
