import { expect, test, vi } from 'vitest';
import { play, pluck, soundSentence, soundState, unlock } from '../../src/sound/index.ts';

// There is no sound where these tests run, which is the case in question. What sounds is tested in browsers.
test('where there is no sound nothing throws, and what is played is over at once', async () => {
  expect(soundState.value).toBe('asleep');
  expect(soundSentence.value).toBeUndefined();
  unlock();
  expect(soundState.value).toBe('refused');
  expect(soundSentence.value).toContain('ear cards wait');
  pluck(60, 2);
  const onEnd = vi.fn<() => void>();
  const onNote = vi.fn<(index: number) => void>();
  const sounding = { tempo: 60, notes: [{ midi: 60, at: 0, length: 2 }] };
  const playing = play(sounding, { onEnd, onNote, speed: 0.5 });
  playing.speed(2);
  await playing.done;
  playing.stop();
  expect(onNote).not.toHaveBeenCalled();
  expect(onEnd).not.toHaveBeenCalled();
  expect(playing.heard()).toBe(0);
});
