import { computed } from '../signals/signal.ts';
import { microphoneState } from './index.ts';
import { LISTENING, type MicrophoneState } from './microphone-state.ts';

/** What to say of it: what is so, and what to do. */
export const MICROPHONE_SENTENCES: Readonly<Partial<Record<MicrophoneState, string>>> = {
  asking:
    'The phone asks whether this page may listen. Nothing is recorded, and nothing leaves the phone.',
  listening: LISTENING,
  refused:
    'The microphone was not allowed. Allow it for this page in the browser’s settings, or put the guitar down here: all other cards go on.',
  none: 'No microphone was found. Plug one in, or put the guitar down here: all other cards go on.',
  taken:
    'Another app is using the microphone. Close it and try again, or put the guitar down here: all other cards go on.',
  gone: 'The microphone went away, by a call or a cable perhaps. Try again when it is back; nothing you answered is lost.',
};

/** What to say about the microphone, where something needs saying. */
export const microphoneSentence = computed(() => MICROPHONE_SENTENCES[microphoneState.value]);
