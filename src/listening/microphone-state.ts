/**
 * `off` until it is wanted; `asking` while the person is asked; `listening`, and the screen has to say so; `refused` by
 * the person or the system; `none` where there is no microphone; `taken` where another app holds it; `gone` where it was
 * there and is no more (a call, a cable), until it is asked for again.
 */
export type MicrophoneState =
  'off' | 'asking' | 'listening' | 'refused' | 'none' | 'taken' | 'gone';

/** Said while it is on. */
export const LISTENING = 'The microphone is on. Nothing is recorded, and nothing leaves the phone.';

/** The state that an error of `getUserMedia` means (W3C, Media Capture and Streams, 10.3). */
export function stateOfError(error: unknown): MicrophoneState {
  const name = error instanceof Error || error instanceof DOMException ? error.name : '';
  if (name === 'NotFoundError' || name === 'OverconstrainedError') return 'none';
  if (name === 'NotReadableError' || name === 'AbortError') return 'taken';
  return 'refused';
}
