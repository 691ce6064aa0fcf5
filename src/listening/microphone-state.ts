/**
 * `off` until it is wanted; `asking` while the person is asked; `listening`, and the screen has to say so; `refused` by
 * the person or the system; `none` where there is no microphone; `taken` where another app holds it; `gone` where it was
 * there and is no more (a call, a cable), until it is asked for again.
 */
export type MicrophoneState =
  'off' | 'asking' | 'listening' | 'refused' | 'none' | 'taken' | 'gone';

/** What to say of it: what is so, and what to do. */
export const MICROPHONE_SENTENCES: Readonly<Partial<Record<MicrophoneState, string>>> = {
  asking:
    'The phone asks whether this page may listen. Nothing is recorded, and nothing leaves the phone.',
  listening: 'The microphone is on. Nothing is recorded, and nothing leaves the phone.',
  refused:
    'The microphone was not allowed. Allow it for this page in the browser’s settings, or put the guitar down here: all other cards go on.',
  none: 'No microphone was found. Plug one in, or put the guitar down here: all other cards go on.',
  taken:
    'Another app is using the microphone. Close it and try again, or put the guitar down here: all other cards go on.',
  gone: 'The microphone went away, by a call or a cable perhaps. Try again when it is back; nothing you answered is lost.',
};

/** The state that an error of `getUserMedia` means (W3C, Media Capture and Streams, 10.3). */
export function stateOfError(error: unknown): MicrophoneState {
  const name = error instanceof Error || error instanceof DOMException ? error.name : '';
  if (name === 'NotFoundError' || name === 'OverconstrainedError') return 'none';
  if (name === 'NotReadableError' || name === 'AbortError') return 'taken';
  return 'refused';
}
