import { isolated } from '../decks/plain.ts';
import { effect, signal } from '../signals/signal.ts';
import { isCounted, isHere, itemsByStep, itemsOf } from '../cards/here.ts';
import type { Deck } from '../decks/deck.ts';
import type { KindName } from '../decks/kinds.ts';
import type { Fault } from '../decks/envelope.ts';
import { drawnFor } from '../parts/handedness.ts';
import { learn, emptyMemory, replay, type Memory } from '../memory/memory.ts';
import type { Item } from '../practice/item.ts';
import type { Incremental } from '../theory/incremental.ts';
import { muted, reference, volume } from '../sound/index.ts';
import * as decks from '../store/decks.ts';
import { noteLessons } from '../store/glance.ts';
import type { Log } from '../store/log.ts';
import { loadSettings, saveSettings } from '../store/settings.ts';
import { isUsed } from '../store/single.ts';
import { StoreTrouble } from '../store/trouble.ts';
import { USUAL, type Settings } from './settings.ts';
import { inSlices } from './slices.ts';
import { erasedElsewhere, trouble, unreadable } from './trouble.ts';

/** A deck on this device. */
export interface Lesson {
  readonly id: string;
  readonly deck: Deck;
  readonly away: boolean;
}

/** A deck with what the device keeps of it: its document. */
export interface WrittenDeck {
  readonly id: string;
  readonly deck: Deck;
  readonly document: unknown;
}

/** A lesson on this device that cannot be read: it stays there, as it is, and goes into a backup. */
export interface QuarantinedLesson {
  readonly id: string;
  /** May be empty. */
  readonly title: string;
  readonly fault: string;
}

/** Whether the device's store has been read: before, nothing is known. */
export const opened = signal(false);
export const hasOpened = new Promise<void>((resolve) => {
  effect(() => void (opened.value && resolve()));
});
export const lessons = signal<readonly Lesson[]>([]);
export const quarantined = signal<readonly QuarantinedLesson[]>([]);
const currentId = signal<string | null>(null);
export const settings = signal<Settings>(USUAL);
/** Null until it is read. */
export const log = signal<Log | null>(null);
/** What is remembered: all reviews of the log, learned in place. */
export const memory = signal<{ readonly of: Memory }>({ of: emptyMemory() });

/** Learns what the log has more than the memory; nothing of it twice, whoever else has learned it meanwhile. */
export function learnNew(): void {
  const { of } = memory.value;
  const { reviews } = log.value!;
  for (let k = of.asked; k < reviews.length; k++) learn(of, reviews.at(k)!);
  memory.value = { of };
}

/** Reads everything from the device. A device that refuses leaves the app working in memory, with a sentence why. */
export async function open(): Promise<void> {
  await Promise.all([readUsedLog(), readStoredSettings(), readLessons(), readCurrent()]);
  const current = currentLesson();
  if (current) await prepare(current);
}

/** Where nothing was ever answered there is nothing to read: what keeps answers comes later. */
async function readUsedLog(): Promise<void> {
  reading = null;
  if (await isUsed()) await haveLog();
}

let reading: Promise<Log> | null = null;

/** The log, read once. Rejects where what reads it cannot be fetched now. */
export async function haveLog(): Promise<Log> {
  reading ??= readLog();
  return reading.catch((error: unknown) => {
    reading = null;
    throw error;
  });
}

async function readLog(): Promise<Log> {
  const { openLog } = await import('../store/log.ts');
  const read = await openLog();
  trouble.value = read.trouble?.message ?? null;
  const learnAll = () => (memory.value = { of: replay(read.reviews) });
  read.erased = () => (erasedElsewhere.value = true);
  read.watch(learnAll);
  learnAll();
  return (log.value = read);
}

async function readCurrent(): Promise<void> {
  currentId.value = (await reportingTrouble(decks.currentDeck())) ?? null;
}

async function readStoredSettings(): Promise<void> {
  const stored = await reportingTrouble(loadSettings());
  if (!stored) return;
  const { readSettings } = await import('./storedSettings.ts');
  settings.value = readSettings(stored);
}

/** Reads the lessons from the device. */
export async function readLessons(): Promise<void> {
  const stored = (await reportingTrouble(decks.listDecks())) ?? [];
  if (stored.length === 0) return;
  const { readDeck } = await import('../decks/document.ts');
  const held: QuarantinedLesson[] = [];
  const read: Lesson[] = [];
  function* each(): Incremental<void> {
    for (const { id, document, away } of stored) {
      const result = readable(() => readDeck(document));
      if ('deck' in result) read.push({ id, deck: result.deck, away });
      else held.push({ id, title: titleIn(document), fault: result.fault });
      yield;
    }
  }
  await inSlices(each());
  await kindsOf(read, isHere);
  lessons.value = read;
  quarantined.value = held;
}

let kinds: Promise<unknown> | null = null;

/** Fetches every kind of card, once. Rejects where it cannot be fetched now. */
export async function fetchKinds(): Promise<void> {
  kinds ??= import('../cards/index.ts');
  await kinds.catch((error: unknown) => {
    kinds = null;
    throw error;
  });
}

/** Fetches the kinds of some decks' cards, unless as much of them is here as is wanted. */
async function kindsOf(
  some: readonly Pick<Lesson, 'deck'>[],
  isEnough: (kind: KindName) => boolean,
): Promise<void> {
  const drills = some.flatMap(({ deck }) => deck.drills);
  if (!drills.every(({ kind }) => isEnough(kind))) await fetchKinds();
}

/** Has as much of a deck's kinds here as it takes to count its items and to say what it asks. */
export function countable(deck: Deck): Promise<void> {
  return kindsOf([{ deck }], isCounted);
}

/** Whatever goes wrong with one lesson costs that lesson only: it is told of, and the others open. */
function readable<T>(read: () => T): T | Fault {
  try {
    return read();
  } catch (error) {
    // What no check foresaw is for whoever mends it.
    console.error(error);
    return { fault: 'This version of Skipwise cannot read it.' };
  }
}

function titleIn(document: unknown): string {
  const { title } = (document ?? {}) as { readonly title?: unknown };
  return typeof title === 'string' ? title : '';
}

/** Waits for a write; where the device refuses it, shows why and goes on. */
export async function reportingTrouble<T>(write: Promise<T>): Promise<T | undefined> {
  try {
    const value = await write;
    trouble.value = log.value?.trouble?.message ?? null;
    return value;
  } catch (error) {
    if (!(error instanceof StoreTrouble)) throw error;
    trouble.value = error.message;
    return undefined;
  }
}

/** Keeps a deck on the device and makes it the one practised. */
export async function take(deck: Deck): Promise<Lesson> {
  const { deckId, writeDeck } = await import('../decks/document.ts');
  return takeWritten({ id: deckId(deck), deck, document: writeDeck(deck) });
}

/** The same of a deck whose document is at hand. */
export async function takeWritten({ id, deck, document }: WrittenDeck): Promise<Lesson> {
  await countable(deck);
  const lesson = { id, deck, away: false };
  await prepare(lesson);
  lessons.value = [lesson, ...lessons.value.filter((other) => other.id !== id)];
  // The device does the one after the other: no lesson is chosen that it does not have.
  await Promise.all([reportingTrouble(decks.keepDeck(id, document, Date.now())), chooseLesson(id)]);
  return lesson;
}

/** Makes a deck the one practised. */
export async function chooseLesson(id: string): Promise<void> {
  currentId.value = id;
  await reportingTrouble(decks.makeCurrent(id));
}

export function lessonById(id: string): Lesson | null {
  return lessons.value.find((lesson) => lesson.id === id) ?? null;
}

/** The lesson practised: the one chosen last, else the newest that is not put away. */
export function currentLesson(): Lesson | null {
  const here = lessons.value.filter(({ away }) => !away);
  return here.find(({ id }) => id === currentId.value) ?? here[0] ?? null;
}

const itemsByDeck = new WeakMap<Deck, readonly Item[]>();

/** The items of a deck, made once. */
export function itemsOfDeck(deck: Deck): readonly Item[] {
  let items = itemsByDeck.get(deck);
  if (!items) itemsByDeck.set(deck, (items = itemsOf(deck)));
  return items;
}

/** Has the items of a deck here before they are asked for: of a long lesson they are made in slices. */
export async function haveItems(deck: Deck): Promise<void> {
  if (!itemsByDeck.has(deck)) itemsByDeck.set(deck, await inSlices(itemsByStep(deck)));
}

/** The same of a lesson on this device. Of one that cannot be read it is told where its items are asked for. */
export async function prepare({ deck }: Pick<Lesson, 'deck'>): Promise<void> {
  await haveItems(deck).catch(() => {});
}

/** The items of a lesson on this device; none where there is no such lesson. */
export function itemsOfLesson(id: string): readonly Item[] {
  const lesson = lessonById(id);
  if (!lesson) return [];
  const items = readable(() => itemsOfDeck(lesson.deck));
  if (!('fault' in items)) return items;
  quarantine(lesson, items.fault);
  itemsByDeck.set(lesson.deck, []);
  return [];
}

function quarantine({ id, deck: { title } }: Lesson, fault: string): void {
  // What is being drawn now still shows it.
  queueMicrotask(() => {
    lessons.value = lessons.value.filter((other) => other.id !== id);
    quarantined.value = [...quarantined.value, { id, title, fault }];
  });
}

/** Changes some settings and keeps them. */
export function changeSettings(change: Partial<Settings>): void {
  settings.value = { ...settings.value, ...change };
  void reportingTrouble(saveSettings(change));
}

effect(() => {
  unreadable.value = quarantined.value.length === 0 ? null : unreadableSentence(quarantined.value);
});

function unreadableSentence([first, ...others]: readonly QuarantinedLesson[]): string {
  const { title, fault } = first!;
  const name = title === '' ? 'A lesson' : `The lesson “${isolated(title)}”`;
  const more = others.length === 0 ? '' : ` Nor can ${others.length} more.`;
  const stay = others.length === 0 ? 'It stays' : 'They stay';
  const it = others.length === 0 ? 'it' : 'them';
  return `${name} on this device cannot be read: ${fault}${more} ${stay} here, untouched; under Lessons you can delete ${it}.`;
}

effect(() => {
  if (opened.value) noteLessons(lessons.value.length + quarantined.value.length > 0);
});

effect(() => {
  volume.value = settings.value.volume;
  muted.value = settings.value.muted;
  reference.value = settings.value.reference;
  const { hand } = settings.value;
  drawnFor.value = hand === 'lesson' ? null : hand;
  const { theme } = settings.value;
  if (theme === 'auto') delete document.documentElement.dataset.theme;
  else document.documentElement.dataset.theme = theme;
});
