/**
 * What the page knows of sound. It is small and comes with the first screen; the player and the renderer of the
 * string come behind it, in chunks of their own.
 */
import { computed, effect, signal } from '../signals/signal.ts';
import type { Arrangement } from './plan.ts';
import type { Controls, Player } from './player.ts';
import type { Sounding } from './sounding.ts';

export type { Sounding } from './sounding.ts';

/**
 * `asleep` until the first gesture; `loading` until every pitch can be played; `suspended` when the system has
 * paused sound (a call, a locked phone); `refused` when there is none.
 */
type SoundState = 'asleep' | 'loading' | 'ready' | 'suspended' | 'refused';

/** How loud, 0 to 1. */
export const volume = signal(0.8);
export const muted = signal(false);
/** A4 in Hz, 430 to 450. */
export const reference = signal(440);

const state = signal<SoundState>('asleep');
/** Where sound stands. */
export const soundState = computed(() => state.value);
/** What to say about it, where something needs saying. */
export const soundSentence = computed(() => SENTENCES[state.value]);

const SENTENCES: Readonly<Partial<Record<SoundState, string>>> = {
  loading: 'The strings are being put on: one moment.',
  suspended: 'Sound is paused. Tap anywhere to go on.',
  refused: 'There is no sound here just now. Eye cards go on; ear cards wait until there is.',
};

/** How a sounding is played, and who is told. */
export interface PlayOptions extends Arrangement {
  /** A note of the sounding, by its index, is heard now. */
  readonly onNote?: (index: number) => void;
  /** A click is heard now, by its index among those of the plan. */
  readonly onClick?: (index: number) => void;
  /** The last note is over. Not called when it is stopped before. */
  readonly onEnd?: () => void;
  /** Slower or faster at the same pitch: a part of the sounding's tempo, 1 where not given. */
  readonly speed?: number;
  /** Whether the click goes on after the count-in. */
  readonly click?: boolean;
  /** Whether the phrase is silent and only the click is heard. */
  readonly muted?: boolean;
}

/** A sounding that is being played, or waits for sound. */
export interface Playing {
  /** Ends it; or, where it is over and nothing was played since, what rings on of it. */
  stop(): void;
  /** When it is over, by itself or stopped; at once where there is no sound. */
  readonly done: Promise<void>;
  /** How long it has sounded by now, ms: from its beginning to where it was over. */
  heard(): number;
  /**
   * When a beat, counted from the beginning of the count-in, is heard at the tempo it began with, in ms on the clock of
   * `event.timeStamp`; null before it sounds.
   */
  heardAt(beat: number): number | null;
  /** Slower or faster from now on, as a part of the sounding's tempo. */
  speed(part: number): void;
  click(on: boolean): void;
  mute(on: boolean): void;
}

const sounds = signal(false);
/** Whether something is played, or waits for sound. What rings on afterwards is not counted. */
export const isSounding = computed(() => sounds.value);

/** How old a tap may be and still sound, in ms. */
const FRESH = 1500;

let context: AudioContext | undefined;
let player: Player | undefined;
let opening: Promise<void> | undefined;
let tap: { midi: number; string: number | undefined; at: number } | undefined;
/** What is played, or was last and may ring on, and how it begins once it can. */
let current: { playing: Playing; begin(player: Player): void; begun: boolean } | undefined;

/** What the player waits for, so that it is not in the way of what is more urgent. */
let moment: Promise<unknown> = Promise.resolve();

/** Has the player fetched no sooner than then. */
export function fetchAfter(then: Promise<unknown>): void {
  moment = then;
}

const loadPlayer = async () => {
  await moment;
  // Tone greets in the console unless told not to.
  (globalThis as { TONE_SILENCE_LOGGING?: boolean }).TONE_SILENCE_LOGGING = true;
  return import('./player.ts');
};

/** Fetches the player and renders the strings, so that they are at hand when the first gesture comes. Starts no sound. */
export async function preload(): Promise<void> {
  try {
    (await loadPlayer()).renderStrings();
  } catch {
    // Not there now (offline before it was kept): `unlock` asks again and then says so.
  }
}

/**
 * Wakes sound. To be called in a person's gesture, or phones stay silent; may be called again at any time.
 * Throws nothing: see `soundState`.
 */
export function unlock(): void {
  try {
    context ??= createContext();
  } catch {
    refuse();
    return;
  }
  context.resume().then(settle, settle);
  opening ??= open(context).catch(() => {
    opening = undefined;
    refuse();
  });
  settle();
}

/** What sound is played in: the one clock of whatever is sounded and heard. Null before sound was first woken. */
export function audioContext(): AudioContext | null {
  return context ?? null;
}

function createContext(): AudioContext {
  // iOS: without this the silent switch mutes the page.
  const session = (navigator as { audioSession?: { type: string } }).audioSession;
  if (session) session.type = 'playback';
  // As short as the device can: 'interactive' answers taps a whole block of 12 ms later on a desktop.
  const created = new AudioContext({ latencyHint: 0.001 });
  created.addEventListener('statechange', settle);
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') unlock();
  });
  return created;
}

async function open(native: AudioContext): Promise<void> {
  const opened = await (await loadPlayer()).openPlayer(native);
  effect(() => opened.setLevel(muted.value ? 0 : volume.value ** 2));
  effect(() => {
    opened.reference = Math.min(450, Math.max(430, reference.value));
  });
  player = opened;
  settle();
}

function refuse(): void {
  state.value = 'refused';
  tap = undefined;
  current?.playing.stop();
}

/** Brings the state up to date, and lets sound what waited for it. */
function settle(): void {
  if (!context) return;
  if (!player) {
    // Where opening has failed it stays refused, until a gesture tries again.
    if (opening) state.value = 'loading';
  } else if (context.state === 'running') {
    state.value = 'ready';
    if (tap && performance.now() - tap.at < FRESH) player.pluck(tap.midi, tap.string);
    tap = undefined;
    if (current && !current.begun) current.begin(player);
  } else {
    state.value = 'suspended';
    // Any gesture wakes it again, wherever the page is.
    for (const gesture of ['click', 'keydown', 'touchend']) {
      document.addEventListener(gesture, unlock, { once: true });
    }
  }
}

/** A tap on the neck: sounds at once, or as soon as there is sound if that is soon enough. */
export function pluck(midi: number, string?: number): void {
  if (state.value !== 'ready') unlock();
  if (state.value === 'ready') player?.pluck(midi, string);
  else tap = { midi, string, at: performance.now() };
}

/**
 * Plays a sounding; what was played before stops. While sound is loading or suspended it waits, and begins when there
 * is sound.
 */
export function play(sounding: Sounding, options: PlayOptions = {}): Playing {
  current?.playing.stop();
  const { speed = 1, click = false } = options;
  const controls: Controls = { speed, click, muted: options.muted ?? false };
  let resolve!: () => void;
  const done = new Promise<void>((over) => (resolve = over));
  let [from, until] = [Infinity, Infinity];
  let heardAt: ((beat: number) => number) | undefined;
  const over = () => {
    until = Math.min(until, performance.now());
    sounds.value = false;
    resolve();
  };
  const playing: Playing = {
    stop() {
      if (current !== mine) return;
      current = undefined;
      if (mine.begun) player?.stop();
      over();
    },
    done,
    heard: () => Math.max(0, Math.min(until, performance.now()) - from),
    heardAt: (beat) => heardAt?.(beat) ?? null,
    speed(part) {
      controls.speed = part;
      if (mine.begun && current === mine) player?.setSpeed(part);
    },
    click: (on) => void (controls.click = on),
    mute: (on) => void (controls.muted = on),
  };
  const mine = {
    playing,
    begun: false,
    begin(ready: Player) {
      mine.begun = true;
      from = performance.now();
      heardAt = ready.playSounding(sounding, options, controls, {
        click: (index) => options.onClick?.(index),
        note: (index) => options.onNote?.(index),
        end() {
          // The strings are left to ring.
          over();
          options.onEnd?.();
        },
      });
    },
  };
  current = mine;
  sounds.value = true;
  if (state.value !== 'ready') unlock();
  if (state.value === 'ready' && player && !mine.begun) mine.begin(player);
  return playing;
}
