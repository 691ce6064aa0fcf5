import { describe, expect, it } from 'vitest';
import { computed, effect, signal, untracked } from '../../src/signals/signal.ts';

/** An effect that notes what it read each time. */
function noted<T>(read: () => T): T[] {
  const notes: T[] = [];
  effect(() => void notes.push(read()));
  return notes;
}

describe('a signal', () => {
  it('tells who has read it of every change, and of nothing that stays the same', () => {
    const count = signal(1);
    const notes = noted(() => count.value);
    count.value = 2;
    count.value = 2;
    count.value = 3;
    expect(notes).toEqual([1, 2, 3]);
  });

  it('tells nobody who only peeks, or reads untracked', () => {
    const count = signal(1);
    const peeked = noted(() => count.peek());
    const read = noted(() => untracked(() => count.value));
    count.value = 2;
    expect([peeked, read]).toEqual([[1], [1]]);
    expect(count.value).toBe(2);
  });

  it('is read by what was read last alone', () => {
    const [which, a, b] = [signal<'a' | 'b'>('a'), signal(1), signal(10)];
    const notes = noted(() => (which.value === 'a' ? a.value : b.value));
    b.value = 20;
    which.value = 'b';
    a.value = 2;
    b.value = 30;
    expect(notes).toEqual([1, 20, 30]);
  });
});

describe('what follows from signals', () => {
  const [one, other] = [signal(1), signal(2)];
  const sum = computed(() => one.value + other.value);

  it('is as they are, and tells when they change', () => {
    const notes = noted(() => sum.value);
    one.value = 5;
    other.value = 7;
    expect(notes).toEqual([3, 7, 12]);
  });

  it('can be peeked at', () => {
    const notes = noted(() => sum.peek());
    one.value = 6;
    expect(notes).toEqual([12]);
    expect(sum.value).toBe(13);
  });
});

describe('an effect', () => {
  it('may change another signal, whose readers are told before it goes on', () => {
    const [given, doubled] = [signal(1), signal(0)];
    const notes = noted(() => doubled.value);
    effect(() => void (doubled.value = given.value * 2));
    given.value = 4;
    expect(notes).toEqual([0, 2, 8]);
  });

  it('that has thrown still reads, and what comes after it does not read for it', () => {
    const [bad, other] = [signal(false), signal(1)];
    const notes = noted(() => {
      if (bad.value) throw new Error('bad');
      return 1;
    });
    expect(() => (bad.value = true)).toThrow('bad');
    expect(other.value).toBe(1);
    other.value = 2;
    bad.value = false;
    expect(notes).toEqual([1, 1]);
  });
});
