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
  expect(playing.ms).toBe(4000);
  playing.speed(2);
  await playing.done;
  playing.stop();
  expect(onNote).not.toHaveBeenCalled();
});

test('how long a sounding will sound includes its count-in; a loop has no end', () => {
  const sounding = { tempo: 120, notes: [{ midi: 60, at: 0, length: 1 }] };
  expect(play(sounding, { countIn: 3 }).ms).toBe(2000);
  expect(play(sounding, { loop: true }).ms).toBe(Infinity);
});
