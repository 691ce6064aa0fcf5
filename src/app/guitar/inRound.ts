import { useEffect, useState } from 'preact/hooks';
import { isSounding } from '../../sound/index.ts';
import { settings } from '../state.ts';
import { guitar } from './guitar.ts';

/** A verdict has been heard: so long it can still be thought about, ms. */
const AFTER_SOUND = 2500;
/** Time to read a character of why, ms: 15 a second, at leisure. */
const CHARACTER = 65;

/** How long a verdict stays at least, ms, with so many characters to be read. */
const reading = (characters: number): number =>
  Math.max(AFTER_SOUND, 1000 + CHARACTER * characters);

/**
 * With the guitar in hand the next card comes by itself once a verdict was read and heard; any tap or key stops that.
 *
 * @param characters to be read of the verdict; null while there is none
 * @returns whether it is going to
 */
export function useByItself(characters: number | null, next: () => void): boolean {
  const isOn = guitar.value !== null && settings.value.guitar.byItself && characters !== null;
  const [stopped, setStopped] = useState(false);
  const [isRead, setRead] = useState(false);
  const goesOn = isOn && !stopped;
  const sounds = isSounding.value;
  useEffect(() => {
    setStopped(false);
    setRead(false);
    if (!isOn) return;
    const timer = setTimeout(() => setRead(true), reading(characters) - AFTER_SOUND);
    const stop = () => setStopped(true);
    addEventListener('pointerdown', stop);
    addEventListener('keydown', stop);
    return () => {
      clearTimeout(timer);
      removeEventListener('pointerdown', stop);
      removeEventListener('keydown', stop);
    };
  }, [isOn]);
  useEffect(() => {
    if (!goesOn || !isRead || sounds) return;
    const timer = setTimeout(next, AFTER_SOUND);
    return () => clearTimeout(timer);
  }, [goesOn, isRead, sounds]);
  return goesOn;
}

/**
 * Says the question of each new card, in a round with the guitar where that is wanted. Cards that are heard say theirs
 * with their sound.
 *
 * @param card what is new when the card is
 * @param isHeard whether it sounds by itself
 * @returns whether it is being said: then nothing is listened to
 */
export function useSpokenQuestion(card: string | null, isHeard: boolean): boolean {
  const [said, setSaid] = useState<string | null>(null);
  const hand = guitar.value;
  const isWanted = !isHeard && !!hand?.say;
  useEffect(() => {
    if (!hand || !isWanted || !card) return;
    let gone = false;
    const question = document.querySelector('.card h1')?.textContent ?? '';
    void hand.ask(question).then(() => !gone && setSaid(card));
    return () => {
      gone = true;
      speechSynthesis.cancel();
    };
  }, [card, isWanted]);
  return isWanted && said !== card;
}
