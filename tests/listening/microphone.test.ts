/** How the microphone is asked for, and in which words it is told what became of it. */
import { afterEach, describe, expect, it, vi } from 'vitest';
import { openLine } from '../../src/listening/microphone.ts';
import { stateOfError } from '../../src/listening/microphone-state.ts';
import { MICROPHONE_SENTENCES } from '../../src/listening/sentences.ts';

afterEach(() => {
  vi.unstubAllGlobals();
});

const open = (context: object = {}) =>
  openLine(
    context as AudioContext,
    () => {},
    () => {},
  );

describe('the microphone', () => {
  it('is asked for as it is: nothing that a telephone does to a voice', async () => {
    const getUserMedia = vi.fn<(asked: unknown) => Promise<never>>(async () => {
      throw new DOMException('', 'NotAllowedError');
    });
    vi.stubGlobal('navigator', { mediaDevices: { getUserMedia } });
    await expect(open()).rejects.toMatchObject({ name: 'NotAllowedError' });
    expect(getUserMedia.mock.calls).toEqual([
      [
        {
          audio: {
            echoCancellation: false,
            noiseSuppression: false,
            autoGainControl: false,
            channelCount: 1,
          },
        },
      ],
    ]);
  });

  it('is let go where it cannot be listened to', async () => {
    const stop = vi.fn<() => void>();
    const stream = { getTracks: () => [{ stop }, { stop }] };
    vi.stubGlobal('navigator', { mediaDevices: { getUserMedia: async () => stream } });
    const audioWorklet = {
      addModule: async () => {
        throw new DOMException('', 'AbortError');
      },
    };
    await expect(open({ audioWorklet })).rejects.toMatchObject({ name: 'AbortError' });
    expect(stop).toHaveBeenCalledTimes(2);
  });

  it('is none where the page may not ask', async () => {
    vi.stubGlobal('navigator', {});
    await expect(open()).rejects.toMatchObject({ name: 'NotFoundError' });
  });

  // W3C, Media Capture and Streams, 10.3.
  it.each([
    ['NotAllowedError', 'refused', /^The microphone was not allowed\. Allow it for this page/],
    ['SecurityError', 'refused', /^The microphone was not allowed\./],
    ['NotFoundError', 'none', /^No microphone was found\. Plug one in/],
    ['OverconstrainedError', 'none', /^No microphone was found\./],
    ['NotReadableError', 'taken', /^Another app is using the microphone\. Close it and try again/],
    ['AbortError', 'taken', /^Another app is using the microphone\./],
  ] as const)('that throws a %s is %s', (name, state, words) => {
    expect(stateOfError(new DOMException('', name))).toBe(state);
    expect(stateOfError(Object.assign(new Error('no'), { name }))).toBe(state);
    expect(MICROPHONE_SENTENCES[state]).toMatch(words);
    expect(MICROPHONE_SENTENCES[state]).toMatch(
      /or put the guitar down here: all other cards go on\.$/,
    );
  });

  it('says while it is on that nothing is recorded', () => {
    for (const state of ['asking', 'listening'] as const)
      expect(MICROPHONE_SENTENCES[state]).toMatch(
        /Nothing is recorded, and nothing leaves the phone\.$/,
      );
    expect(MICROPHONE_SENTENCES.gone).toMatch(/nothing you answered is lost\.$/);
    expect(MICROPHONE_SENTENCES.off).toBeUndefined();
    expect(stateOfError('no error')).toBe('refused');
  });
});
