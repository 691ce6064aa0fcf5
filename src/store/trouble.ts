/** Why the device does not keep what it is given. */
type Cause = 'refused' | 'full' | 'silent' | 'failed';

const sentences: Record<Cause, string> = {
  refused:
    'This browser does not let the page keep anything (a private window, perhaps). You can go on, but save your log to a file before you close the page.',
  full: 'The device is full, so your last answers are not stored yet. Free some space, or save your log to a file; you can go on meanwhile.',
  silent:
    'The storage of this device does not answer, so what you do is only in this window for now. You can go on; save your log to a file before you close the page.',
  failed:
    'Storing failed, so your last answers are not kept yet. You can go on; save your log to a file before you close the page.',
};

/** The store did not answer in time. */
export class Silence extends Error {
  override readonly name = 'Silence';
}

/** The device refused to keep something. The message is a sentence for the student; `cause` is the browser's error. */
export class StoreTrouble extends Error {
  override readonly name = 'StoreTrouble';
  readonly why: Cause;

  constructor(error: unknown) {
    const why = causeOf(error);
    super(sentences[why], { cause: error });
    this.why = why;
  }
}

function causeOf(error: unknown): Cause {
  const name = error instanceof Error ? error.name : '';
  if (name === 'QuotaExceededError') return 'full';
  if (name === 'Silence') return 'silent';
  // Without IndexedDB its mere name is a ReferenceError; private windows answer with one of the others.
  const refusals = ['ReferenceError', 'SecurityError', 'InvalidStateError', 'NotAllowedError'];
  return refusals.includes(name) ? 'refused' : 'failed';
}
