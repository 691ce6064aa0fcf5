/** The guitar in hand: whether it is wanted in a round, whether the phone hears it, and how cards are lent it. */
import { computed, signal } from '@preact/signals';
import { wantsGuitar } from '../../cards/here.ts';
import type { Guitar } from '../../cards/kind.ts';
import type { KindName } from '../../decks/kinds.ts';
import {
  closeMicrophone,
  follow,
  hearFreely,
  hearStrikes,
  microphoneState,
  openMicrophone,
  type FreeListener,
  type Task,
} from '../../listening/index.ts';
import { localDay } from '../../memory/day.ts';
import { instrumentId, type Instrument } from '../../neck/instrument.ts';
import type { Item } from '../../practice/item.ts';
import { heardAt } from '../../sound/heardAt.ts';
import { audioContext, unlock } from '../../sound/index.ts';
import type { GuitarSettings, Tuned } from '../settings.ts';
import { changeSettings, itemsOfLesson, settings } from '../state.ts';
import { canSpeak, speak } from './spoken.ts';
import { delayed, undelayed, undelayedLine } from './late.ts';

/** Kinds that are tapped, and may be played, or struck, where the guitar is in hand. */
const MAY_BE_PLAYED: readonly KindName[] = ['place', 'follow', 'fill', 'pulse'];

/** How the guitar stands in the round: to be made ready, ready, or put down until the next round. */
const stage = signal<'waiting' | 'ready' | 'down'>('waiting');
/** How far the guitar of this round is off as a whole, cents; null before it was tuned up or that was left out. */
const offset = signal<number | null>(null);

/** Whether a card of this kind can be answered by playing. */
export const isPlayable = ({ kind }: Pick<Item, 'kind'>): boolean =>
  MAY_BE_PLAYED.includes(kind) || wantsGuitar(kind);

/** Whether a round on a lesson is one with the guitar: it is in hand, has something to play and was not put down. */
export function isWithGuitar(lesson: string): boolean {
  return (
    settings.value.guitar.inHand && stage.value !== 'down' && itemsOfLesson(lesson).some(isPlayable)
  );
}

/** Whether the guitar of this round has been made ready, though the phone may hear it no more. */
export const wasReady = computed(() => stage.value === 'ready');

/** What cards are lent; null where no guitar is in hand, or the phone does not hear it. */
export const guitar = computed<Guitar | null>(() =>
  stage.value === 'ready' && microphoneState.value === 'listening' ? LENT : null,
);

const LENT: Guitar = {
  follow(expected, follower) {
    const { reference } = settings.value;
    const delay = settings.value.guitar.delay ?? 0;
    const known = { ...delayed(expected, delay), offset: offset.value ?? 0, reference };
    return follow(known, undelayed(follower, delay));
  },
  now: () => audioContext()?.currentTime ?? 0,
  strikes(onStrike) {
    const delay = settings.value.guitar.delay ?? 0;
    return hearStrikes((time) => {
      const context = audioContext();
      if (context) onStrike(heardAt(context, time - delay));
    });
  },
  get isMeasured() {
    return settings.value.guitar.delay !== null;
  },
  get say() {
    return settings.value.guitar.spoken && canSpeak() ? (words: string) => void speak(words) : null;
  },
  get byItself() {
    return settings.value.guitar.byItself;
  },
};

/** Hears a line of which nothing is asked, on a guitar that is ready; it is told when the notes were played. */
export function hearLine(listener: FreeListener): Task {
  const { reference, guitar: known } = settings.value;
  const playing = { offset: offset.value ?? 0, reference };
  return hearFreely(playing, undelayedLine(listener, known.delay ?? 0));
}

export function changeGuitar(change: Partial<GuitarSettings>): void {
  changeSettings({ guitar: { ...settings.value.guitar, ...change } });
}

/**
 * Begins a round with the guitar. To be called in a person's gesture: who knows what is heard is asked for the
 * microphone at once.
 */
export function takeUp(lesson: string): void {
  stage.value = 'waiting';
  offset.value = null;
  if (isWithGuitar(lesson) && settings.value.guitar.told) listen();
}

/** The same for playing of which nothing is asked, whatever the lesson has to play. */
export function takeUpFreely(): void {
  stage.value = 'waiting';
  if (settings.value.guitar.told) listen();
}

/** Asks for the microphone. To be called in a person's gesture. */
export function listen(): void {
  unlock();
  const context = audioContext();
  if (context) void openMicrophone(context);
  if (stage.value === 'ready') stage.value = 'waiting';
}

/** The guitar is ready, and so many cents off as a whole. */
export function makeReady(cents: number): void {
  offset.value = cents;
  stage.value = 'ready';
}

/** How the guitar of this round was tuned up; else, where that was today, how it was then. Null where it was not. */
export function tunedBefore(instrument: Instrument, now: number): number | null {
  if (offset.value !== null) return offset.value;
  const { tuned } = settings.value.guitar;
  return tuned && isOfToday(tuned, instrument, now) ? tuned.offset : null;
}

function isOfToday({ at, instrument: id }: Tuned, instrument: Instrument, now: number): boolean {
  const day = (time: number) => localDay(time, -new Date(time).getTimezoneOffset());
  return id === instrumentId(instrument) && day(at) === day(now);
}

/** Whether the guitar was tuned up since the round began: then the microphone alone was away. */
export const isTuned = computed(() => offset.value !== null);

/** Goes on without the guitar until the next round. */
export function putDown(): void {
  stage.value = 'down';
  closeMicrophone();
}

/** The round is left: the microphone is let go, and whoever comes back is asked again. */
export function leave(): void {
  closeMicrophone();
  if (stage.value === 'ready') stage.value = 'waiting';
}

// A page that is put away keeps nothing open.
if (typeof addEventListener === 'function') addEventListener('pagehide', () => closeMicrophone());
