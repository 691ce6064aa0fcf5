/** The guitar in hand: whether it is wanted in a round, and whether the phone hears it. */
import { computed, effect, signal } from '../../signals/signal.ts';
import { KINDS } from '../../cards/here.ts';
import { closeMicrophone, microphoneState, openMicrophone } from '../../listening/index.ts';
import type { Item } from '../../practice/item.ts';
import { audioContext, unlock } from '../../sound/index.ts';
import type { GuitarSettings } from '../settings.ts';
import { changeSettings, itemsOfLesson, settings } from '../state.ts';
import { guitar, type Lent } from './guitar.ts';

/** How the guitar stands in the round: to be made ready, ready, or put down until the next round. */
const stage = signal<'waiting' | 'ready' | 'down'>('waiting');
/** How far the guitar of this round is off as a whole, cents; null before it was tuned up or that was left out. */
export const offset = signal<number | null>(null);

/** Whether a card of this kind can be answered by playing. */
export const isPlayable = ({ kind }: Pick<Item, 'kind'>): boolean => KINDS[kind].playable;

/** Whether a round on a lesson is one with the guitar: it is in hand, has something to play and was not put down. */
export function isWithGuitar(lesson: string): boolean {
  return (
    settings.value.guitar.inHand && stage.value !== 'down' && itemsOfLesson(lesson).some(isPlayable)
  );
}

/** Whether the guitar of this round has been made ready, though the phone may hear it no more. */
export const wasReady = computed(() => stage.value === 'ready');

/** The guitar once it was made ready: how that is lent comes with the screen that makes it ready (`lent.ts`). */
const lent = signal<Lent | null>(null);

effect(() => {
  const isHeard = stage.value === 'ready' && microphoneState.value === 'listening';
  guitar.value = isHeard ? lent.value : null;
});

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
export function makeReady(cents: number, ready: Lent): void {
  offset.value = cents;
  lent.value = ready;
  stage.value = 'ready';
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
