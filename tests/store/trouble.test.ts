/** What is said where the device keeps nothing: what is so, and what to do. Names of errors: Indexed Database API 3.0, 2.9. */
import { describe, expect, it } from 'vitest';
import { Silence, StoreTrouble } from '../../src/store/trouble.ts';

const named = (name: string) => Object.assign(new Error('no'), { name });

describe('trouble with the store', () => {
  it.each([
    [named('QuotaExceededError'), 'full'],
    [new Silence(), 'silent'],
    [new ReferenceError('indexedDB is not defined'), 'refused'],
    [named('SecurityError'), 'refused'],
    [named('InvalidStateError'), 'refused'],
    [named('NotAllowedError'), 'refused'],
    [named('UnknownError'), 'failed'],
    [named('AbortError'), 'failed'],
    [null, 'failed'],
    ['QuotaExceededError', 'failed'],
  ])('%s is one of %s', (error, why) => {
    const trouble = new StoreTrouble(error);
    expect(trouble.why).toBe(why);
    expect(trouble.cause).toBe(error);
    expect(trouble.name).toBe('StoreTrouble');
  });

  it.each([
    [
      'full',
      named('QuotaExceededError'),
      'The device is full, so your last answers are not stored yet. Free some space, or save your log to a file; you can go on meanwhile.',
    ],
    [
      'refused',
      named('SecurityError'),
      'This browser does not let the page keep anything (a private window, perhaps). You can go on, but save your log to a file before you close the page.',
    ],
    [
      'silent',
      new Silence(),
      'The storage of this device does not answer, so what you do is only in this window for now. You can go on; save your log to a file before you close the page.',
    ],
    [
      'failed',
      named('UnknownError'),
      'Storing failed, so your last answers are not kept yet. You can go on; save your log to a file before you close the page.',
    ],
  ])('that is %s says so', (_, error, sentence) => {
    expect(new StoreTrouble(error).message).toBe(sentence);
  });
});
