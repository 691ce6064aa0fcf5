import { computed, signal } from '../../signals/signal.ts';
import { KINDS, wantsGuitar } from '../../cards/here.ts';
import type { Card, Explanation, Presented } from '../../cards/kind.ts';
import { gradeOf } from '../../practice/grade.ts';
import type { Verdict } from '../../practice/item.ts';
import { answerCard, caughtUp, metCard, undecidedCard } from '../../practice/next.ts';
import { progress as progressOf, startRound, type Goal, type Round } from '../../practice/round.ts';
import type { Playing } from '../../sound/index.ts';
import { loadRound, saveRound } from '../../store/round.ts';
import { startAhead } from '../days.ts';
import { lostSentence } from '../lost.ts';
import {
  haveLog,
  itemsOfLesson,
  learnNew,
  lessonById,
  log,
  memory,
  prepare,
  settings,
  reportingTrouble,
} from '../state.ts';
import { trouble } from '../trouble.ts';
import { closed, drawable, kindsFor, putOff } from './askable.ts';
import { forgetUnheard, letWait, sayUnheard, unheardSentence } from './unheard.ts';

/** From the answer to the verdict, ms: half a second taught best (Worthy et al. 2013). */
const VERDICT_DELAY = 500;

/** The card on the screen and how far it is. */
interface Shown {
  readonly card: Card;
  readonly verdict: Verdict | null;
  readonly explanation: Explanation | null;
  /** How often it could not be told what was played: once it is played again, then only tapped. */
  readonly unheard: number;
  readonly presented: Presented | null;
}

/** The round that is going on, kept on the device after every card. */
export const round = signal<Round | null>(null);
export const shown = signal<Shown | null>(null);

/** The lesson of the round; null where none is going on. */
export const lessonOfRound = computed(() => round.value?.deck ?? null);

/** Times of the card on the screen, and what was played of it. */
let shownAt = 0;
let sounded: Playing[] = [];
let hidden = false;

if (typeof document !== 'undefined') {
  document.addEventListener('visibilitychange', () => {
    if (document.hidden) hidden = true;
  });
}

/** How far the round is, 0 to 1. */
export const progress = computed(() => {
  return round.value ? progressOf(round.value) : 0;
});

/** Begins a round on a lesson: for so many minutes or cards, or until enough is known. To be called in a person's gesture. */
export async function beginRound(deck: string, length: number | Goal): Promise<void> {
  await takeUpGuitar(deck);
  const now = Date.now();
  const goal = typeof length === 'number' ? { minutes: length } : length;
  const seed = crypto.getRandomValues(new Uint32Array(1))[0]!;
  const lesson = startAhead(lessonById(deck)?.deck.lessonDay ?? null, now);
  round.value = startRound({ deck, goal, seed, now, lesson });
  forgetUnheard();
  await draw();
}

/** Takes up a guitar that is in hand for a round that begins or is gone on with. To be called in a person's gesture. */
export async function takeUpGuitar(deck: string): Promise<void> {
  if (settings.value.guitar.inHand) (await import('../guitar/inHand.ts')).takeUp(deck);
}

/** The round as it stands on the device: left when the page was, or gone on with or ended in another window since. */
export async function restore(): Promise<void> {
  // What the device refused is only here.
  if (round.value && !isKept) return;
  const kept = await reportingTrouble(loadRound());
  if (kept === null) round.value = null;
  // As it was written here: there is nothing to check, and the checks need not be fetched.
  if (!kept || JSON.stringify(kept) === written) return;
  const { readRound } = await import('../../practice/storedRound.ts');
  const stored = readRound(kept);
  const lesson = stored && lessonById(stored.deck);
  if (!lesson) return;
  await prepare(lesson);
  round.value = caughtUp(stored, itemsOfLesson(stored.deck), log.value?.reviews ?? []);
}

/** Shows the open card of the round again, or the next one. */
export async function draw(): Promise<void> {
  if (round.value) await kindsFor(round.value);
  const current = round.value;
  if (!current) return;
  const next = drawable(current);
  if (next) round.value = next.round;
  await keep();
  shown.value = next && (next.meet ? met(next.card) : asking(next.card));
  unheardSentence.value = null;
  shownAt = performance.now();
  sounded = [];
  hidden = false;
}

/** Goes on from the card on the screen: one that was only shown is asked later, and nothing of it is logged. */
export async function goOn(): Promise<void> {
  // Whoever taps twice has met one card.
  if (round.value?.open?.meet && isOpen()) round.value = metCard(round.value, Date.now());
  await draw();
}

function asking(card: Card): Shown {
  return { card, verdict: null, explanation: null, presented: null, unheard: 0 };
}

/** A card with its answer, before it is ever asked. */
function met(card: Card): Shown {
  const verdict = { right: true, takenFor: null };
  return { card, verdict, explanation: answerOf(card), presented: 'new', unheard: 0 };
}

/** What explains a card's right answer, where none was given. */
function answerOf(card: Card): Explanation {
  const right = { right: true, takenFor: null };
  return KINDS[card.item.kind].explain(card, right, '', settings.value.naming);
}

/** Goes on with another card where the screen of this one could not be shown. */
export async function skip({ item }: Card, error: unknown): Promise<void> {
  if (round.value?.open?.item !== item.id) return;
  putOff(item, error);
  round.value = closed(round.value);
  await draw();
}

/**
 * It cannot be told what was played on the open card: neither right nor wrong, and nothing is logged. A card that can be
 * tapped stays, to be played once more and then tapped; any other is let go, and comes again once.
 */
export async function unheard(): Promise<void> {
  const current = shown.value;
  if (!current || !isOpen()) return;
  if (wantsGuitar(current.card.item.kind)) {
    letWait(current.card.item.id, round.value!.asked.length);
    await letGo();
    sayUnheard('let go');
    return;
  }
  const times = current.unheard + 1;
  shown.value = { ...current, unheard: times };
  sayUnheard(times === 1 ? 'again' : 'tap');
}

/** Lets go of the open card where it needs the guitar and there is none any more: nothing of it is logged. */
export async function withoutGuitar(): Promise<void> {
  if (shown.value && isOpen() && wantsGuitar(shown.value.card.item.kind)) await letGo();
}

const isOpen = () => round.value?.open?.item === shown.value?.card.item.id;

async function letGo(): Promise<void> {
  round.value = closed(round.value!);
  await draw();
}

/** Listening is not thinking. */
export function addSounded(playing: Playing): void {
  sounded.push(playing);
}

/** Asked to be shown: not known, and taken for nothing. */
const NOT_KNOWN: Verdict = { right: false, takenFor: null };

/** Judges an answer, stores it, and only then shows the verdict. Null asks to be shown it. */
export async function answer(given: string | null, taps: number): Promise<void> {
  const current = round.value;
  const card = shown.value?.card;
  // Once handed in, a card is answered, though its verdict is yet to come.
  if (!current?.open || current.open.meet || !card || shown.value?.verdict) return;
  const kind = KINDS[card.item.kind];
  unheardSentence.value = null;
  const answered = performance.now();
  // What still sounds has been heard so far.
  const listened = sounded.reduce((ms, playing) => ms + playing.heard(), 0);
  const verdict = given === null ? NOT_KNOWN : kind.judge(card, given);
  if (kind.sense === 'time')
    void import('./timing.ts').then(({ keepTiming }) => keepTiming(card, given));
  if (verdict.near) {
    // Neither right nor wrong: nothing of it is stored, and it is asked again.
    round.value = undecidedCard(current);
    await keep();
    return showVerdict(card, verdict, given, answered);
  }
  const timing = {
    ms: Math.round(answered - shownAt),
    sounded: Math.round(Math.min(listened, answered - shownAt)),
    taps,
    hidden,
  };
  const grade = gradeOf({ right: verdict.right, ...timing }, memory.value.of.paces.get(kind.name));
  const at = Date.now();
  const review = {
    item: card.item.id,
    seed: card.seed,
    at,
    offset: -new Date(at).getTimezoneOffset(),
    right: verdict.right,
    takenFor: verdict.takenFor,
    ...timing,
    grade,
  };
  const told = { ...verdict, shown: given === null, given };
  round.value = answerCard(current, itemsOfLesson(current.deck), told, at);
  const kept = await haveLog().catch(() => null);
  if (!kept) {
    // Nothing keeps answers yet, and the net is gone: once it is there again the card is asked again.
    round.value = current;
    trouble.value = lostSentence('Your answer could not be kept');
    return;
  }
  await reportingTrouble(kept.append(review));
  learnNew();
  await keep();
  showVerdict(card, verdict, given, answered);
}

function showVerdict(card: Card, verdict: Verdict, given: string | null, answered: number): void {
  const explanation =
    given === null
      ? answerOf(card)
      : KINDS[card.item.kind].explain(card, verdict, given, settings.value.naming);
  const presented = given === null ? 'asked for' : null;
  const wait = VERDICT_DELAY - (performance.now() - answered);
  setTimeout(
    () => {
      // Whoever left meanwhile and came back has another card before them.
      if (shown.value?.card === card)
        shown.value = { card, verdict, explanation, presented, unheard: 0 };
    },
    Math.max(0, wait),
  );
}

/** Leaves the round where it is. */
export async function end(): Promise<void> {
  round.value = null;
  shown.value = null;
  await keep();
}

/** Whether the device has the round as it was last. */
let isKept = true;
/** The round as it was written here last. */
let written = '';
let writing: Promise<void> = Promise.resolve();

/** Resolves once the device has the round as it is; what it has, or is being given, is not written twice. */
function keep(): Promise<void> {
  const now = JSON.stringify(round.value);
  if (!isKept || now !== written) writing = write(now);
  return writing;
}

async function write(now: string): Promise<void> {
  written = now;
  isKept = (await reportingTrouble(saveRound(round.value).then(() => true))) ?? false;
}
