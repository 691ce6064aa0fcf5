/**
 * What the page knows of listening. It is small; the microphone, its worklet and the Worker that judges come behind it, in
 * chunks of their own, when listening is first wanted. Nothing that is heard is kept or sent.
 *
 * A screen: `openMicrophone(context)`, show `microphoneSentence` (`sentences.ts`), `hearSilence()`, then `tuneUp`,
 * `measureDelay` and `follow` (`tasks.ts`), one at a time; `closeMicrophone()` when it is left.
 */
import { computed, signal } from '../signals/signal.ts';
import type { Task } from './listening.ts';
import type { Line } from './microphone.ts';
import { stateOfError, type MicrophoneState } from './microphone-state.ts';
import type { Request, Reply } from './orders.ts';

export * from './listening.ts';
export type { MicrophoneState } from './microphone-state.ts';

const state = signal<MicrophoneState>('off');
/** Where the microphone stands. */
export const microphoneState = computed(() => state.value);

let line: Line | undefined;
let opening = 0;
let lastId = 0;
/** Who is told of the task that runs. */
let told: { id: number; tell: (told: Reply) => void; gone: () => void } | undefined;

/**
 * Asks for the microphone. To be called in a person's gesture.
 * @param context that sound is played in too, so that there is one clock
 * @returns whether it listens now; throws nothing, see `microphoneState`
 */
export async function openMicrophone(context: AudioContext): Promise<boolean> {
  if (line) return true;
  const own = ++opening;
  state.value = 'asking';
  setAudioSession('play-and-record');
  try {
    const { openLine } = await import('./microphone.ts');
    const opened = await openLine(context, pass, () => leave('gone'));
    // Left while the person was being asked.
    if (own !== opening) {
      opened.close();
      return false;
    }
    line = opened;
    state.value = 'listening';
    return true;
  } catch (error) {
    if (own === opening) leave(stateOfError(error));
    return false;
  }
}

/** The context that the microphone is heard in; none where it is closed. */
export function microphoneContext(): AudioContext | undefined {
  return line?.context;
}

/** Lets go of the microphone, whatever it was doing. */
export function closeMicrophone(): void {
  opening++;
  line?.close();
  leave('off');
}

function leave(to: MicrophoneState): void {
  line = undefined;
  state.value = to;
  setAudioSession('playback');
  const before = told;
  told = undefined;
  before?.gone();
}

/** iOS: where sound goes and whether the microphone may be on. */
function setAudioSession(type: string): void {
  const session = (navigator as { audioSession?: { type: string } }).audioSession;
  if (session) session.type = type;
}

function pass(word: Reply): void {
  if (word.id === told?.id) told.tell(word);
}

/** Gives an order in place of the one before; without a microphone it is never told of. */
export function giveOrder(
  make: (id: number) => Request,
  tell: (told: Reply) => void,
  gone: () => void = () => {},
): Task {
  const id = ++lastId;
  if (line) told = { id, tell, gone };
  else gone();
  line?.order(make(id));
  const send = (what: 'finish' | 'restart' | 'stop') => line?.order({ do: what, id });
  return {
    finish: () => send('finish'),
    restart: () => send('restart'),
    stop() {
      send('stop');
      if (told?.id === id) told = undefined;
    },
  };
}
