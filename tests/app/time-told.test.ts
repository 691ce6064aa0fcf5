import { beforeAll, describe, expect, it } from 'vitest';
import { pulse } from '../../src/cards/pulse/index.ts';
import { tapsText } from '../../src/cards/pulse/judge.ts';
import { itemIn } from '../cards/items.ts';

let sureTimingOf: (typeof import('../../src/app/round/timing.ts'))['sureTimingOf'];
beforeAll(async () => {
  Object.assign(globalThis, { document: { documentElement: { dataset: {} } } });
  ({ sureTimingOf } = await import('../../src/app/round/timing.ts'));
});

const id = (figure: string, tempo: number) =>
  `pulse:Bb major:1:triad:guitar:${figure}:${tempo}:beat`;
describe('what is sure of a card in time', () => {
  it('says what limps and who rushes where that is sure, and nothing where it is not', () => {
    const card = pulse.ask(itemIn(pulse, id('triplets', 80))!, 2);
    const due = card.plan.slots.map(({ seconds }) => seconds);
    const of = (taps: readonly number[]) => sureTimingOf(card, tapsText(taps));
    expect(of(due)).toEqual({ spread: null, drift: null, limps: null });
    const bent = of(due.map((time, i) => (i % 3 === 1 ? time - 0.02 : time)));
    expect(bent!.limps).toMatchObject({ place: 2, late: expect.closeTo(-0.02) });
    expect(of(due.map((time) => time * 0.97))!.drift).toBeCloseTo(-0.03);
    expect(of(due.slice(0, 9))).toBeNull();
    // Of two places the one that is farther out, early or late; of a drift only what is sure.
    const both = (second: number, third: number) =>
      of(due.map((time, i) => time + [0, second, third][i % 3]!))!.limps!.place;
    expect([both(-0.04, 0.025), both(0.025, -0.04), both(0.04, 0.025)]).toEqual([2, 3, 2]);
    expect(of(due.map((time) => time * 0.995))!.drift).toBeNull();
  });
});
