import { describe, expect, it } from 'vitest';
import { itemsOf } from '../../src/cards/index.ts';
import { countAloud } from '../../src/cards/pulse/aloud.ts';
import { pulse } from '../../src/cards/pulse/index.ts';
import type { PulseItem } from '../../src/cards/pulse/items.ts';
import { judgementOf, tapsText } from '../../src/cards/pulse/judge.ts';
import { stepsByPlace, stripTaps } from '../../src/cards/pulse/byPlace.ts';
import { clicked } from '../../src/cards/pulse/clicks.ts';
import { judgedTaps } from '../../src/theory/timing/judge.ts';
import { seeded } from '../../src/theory/random.ts';
import { beats } from '../../src/theory/rhythm.ts';
import { planOf } from '../../src/sound/plan.ts';
import { normal } from '../theory/timing/player.ts';
import { deckIn } from './decks.ts';
import { phraseDeck } from './phrases.ts';
import { itemIn } from './items.ts';

const ID = 'pulse:Bb major:1:triad:guitar:triplets:80:beat';
const cardOf = (id = ID, seed = 2) => pulse.ask(itemIn(pulse, id)!, seed);
const card = cardOf();
/** When each tap is due, 250 ms apart, in seconds. */
const due = card.plan.slots.map(({ seconds }) => seconds);
const scattered = (by: number, seed = 1) => {
  const chance = seeded(seed);
  return due.map((time) => time + by * normal(chance));
};
/** What is said of taps, late as any device makes them. */
const said = (taps: readonly number[], of = card) => {
  const answer = tapsText(taps.map((time) => time + 0.04));
  const verdict = pulse.judge(of, answer);
  return { verdict, ...pulse.explain(of, verdict, answer, 'english') };
};
const RIGHT = { right: true, takenFor: null };
const WRONG = { right: false, takenFor: null };
const NEAR = { right: false, takenFor: null, near: true };

describe('the items of a drill of time', () => {
  const items = itemsOf(deckIn('Bb major')).filter(({ kind }) => kind === 'pulse');

  it('are every figure at every tempo with every click, each after the easier one', () => {
    const short = (id: string | undefined) => id?.replace('pulse:Bb major:1:triad:guitar:', '');
    expect(items.map(({ id, after }) => [short(id), short(after)])).toEqual([
      ['triplets:60:beat', undefined],
      ['triplets:80:beat', 'triplets:60:beat'],
      ['triplets:60:gone', 'triplets:60:beat'],
      ['triplets:80:gone', 'triplets:60:gone'],
      ['eighths:60:beat', undefined],
      ['eighths:80:beat', 'eighths:60:beat'],
      ['eighths:60:gone', 'eighths:60:beat'],
      ['eighths:80:gone', 'eighths:60:gone'],
    ]);
  });

  it('are the rhythm of each phrase, once where they have the same', () => {
    const deck = deckIn('Bb major');
    const phrase = {
      tempo: 72,
      notes: [58, 62, 65, 69].map((midi, i) => ({
        midi,
        name: ['Bb', 'D', 'F', 'A'][i]!,
        at: beats(i, 3),
        length: i < 3 ? beats(1, 3) : beats(2),
      })),
    };
    const drill = { kind: 'pulse', figures: ['phrase'], tempos: [60], clicks: ['beat'] } as const;
    const found = pulse.items({ ...deck, phrases: [phrase, phrase] }, drill);
    expect(found.map(({ id }) => id)).toEqual([
      'pulse:Bb major:1:triad:guitar:phrase:1/3x3:2:60:beat',
    ]);
    expect(itemIn(pulse, found[0]!.id)).toEqual(found[0]);
    expect(pulse.words.item(found[0]!)).toBe('the phrase’s rhythm at 60');
    expect(pulse.words.drill(drill)).toBe('keep the phrase’s rhythm even at 60');
    for (const bad of ['phrase:60', 'phrase:1/3 :2:60', 'phrase:0:60', '1/3x3:60'])
      expect(itemIn(pulse, `pulse:Bb major:1:triad:guitar:${bad}:beat`), bad).toBeNull();
  });

  it('are asked in a key that stacks no chords too, by the key that it is part of', () => {
    const blues = deckIn('A blues');
    expect(itemsOf(blues).map(({ id }) => id)).toContain(
      'pulse:A minor:1:triad:guitar:triplets:60:beat',
    );
  });

  it('are named by what is kept even', () => {
    const { words } = pulse;
    const item = itemIn(pulse, ID)!;
    expect(words.item(item)).toBe('triplets at 80');
    expect(words.itemPlace(item)).toBe('triplets at 80, a click on every beat');
    const drill = {
      kind: 'pulse',
      figures: ['triplets', 'eighths'],
      tempos: [60, 72],
      clicks: ['bar'],
    } as const;
    expect(words.drill(drill)).toBe('keep triplets and eighths even at 60 to 72');
    expect(words.drill({ ...drill, tempos: [60] })).toBe('keep triplets and eighths even at 60');
  });
});

describe('a card of time', () => {
  it('asks for 48 taps, and of what is well known for a spread of 6 % instead of 10', () => {
    expect(due).toHaveLength(48);
    expect([cardOf(ID, 4).allowed, cardOf(ID, 5).allowed]).toEqual([0.1, 0.06]);
  });

  it('is counted in as triplets are, then clicked as its plan says', () => {
    const gone = cardOf(ID.replace('beat', 'gone'));
    const { clicks, start, end } = planOf({ tempo: 80, notes: [] }, clicked(gone.plan));
    expect([start, end]).toEqual([4, 20]);
    const counted = clicks.filter((click) => click.counted).map(({ at, accent }) => [at, accent]);
    expect(counted.slice(0, 4)).toEqual([
      [0, 'bar'],
      [expect.closeTo(1 / 3), 'between'],
      [expect.closeTo(2 / 3), 'between'],
      [1, 'beat'],
    ]);
    expect(counted).toHaveLength(12);
    expect(clicks.slice(12).map(({ at }) => at)).toEqual([4, 5, 6, 7, 12, 13, 14, 15]);
    const bar = ['bar', 'beat', 'beat', 'beat'];
    expect(clicks.slice(12).map(({ accent }) => accent)).toEqual([...bar, ...bar]);
    expect(clicks.slice(12).some((click) => click.counted)).toBe(false);
  });
});

describe('the verdict on taps', () => {
  it('is right for even ones, and says no more of them than can be told', () => {
    expect(said(due)).toMatchObject({
      verdict: RIGHT,
      title: 'Even at 80',
      sentence: 'Your steps spread by less than 6 ms, as even as can be told here.',
      detail: '',
    });
  });

  it('is wrong for uneven ones', () => {
    expect(said(scattered(0.035))).toMatchObject({
      verdict: WRONG,
      title: 'Not yet even',
      sentence: 'Your steps spread by 18 % of a step; at most 10 % is even.',
      detail: '',
    });
  });

  it('is near where the bar lies within what 48 taps can tell', () => {
    expect(said(scattered(0.0175))).toMatchObject({
      verdict: NEAR,
      title: 'Near: once more',
      sentence:
        'Your steps spread by 8 to 12 % of a step, and at most 10 % is even: too near to say, so it is asked again.',
    });
  });

  it('names the note of the triplet that is bent, and how far', () => {
    const bent = scattered(0.004).map((time, i) => (i % 3 === 1 ? time - 0.018 : time));
    expect(said(bent)).toMatchObject({
      verdict: RIGHT,
      detail: 'Your second note comes 18 ms early.',
    });
  });

  it('is near for even ones that leave the click, and says which way', () => {
    expect(said(due.map((time) => time * 0.98))).toMatchObject({
      verdict: NEAR,
      sentence: 'Even, but you ran ahead of the click by 2.0 %, so it is asked again.',
    });
    expect(said(due.map((time) => time * 1.03)).sentence).toBe(
      'Even, but you fell behind the click by 3.0 %, so it is asked again.',
    );
  });

  it('is near for even ones that are too many: more than a twelfth of what was asked', () => {
    const twice = (every: number) =>
      [...due, ...due.filter((_, i) => i % every === 1).map((time) => time + 0.12)].toSorted(
        (a, b) => a - b,
      );
    expect(said(twice(8))).toMatchObject({
      verdict: NEAR,
      title: 'Near: once more',
      sentence: 'Even, but 6 taps were too many, so it is asked again.',
    });
    expect(said(twice(16)).verdict).toEqual(RIGHT);
  });

  it('says of uneven ones too that they leave the click', () => {
    expect(said(scattered(0.035).map((time) => time * 0.95)).detail).toBe(
      'You ran ahead of the click by 5.0 %.',
    );
  });

  it('says of a note that stands alone in its beat where it is', () => {
    const held = cardOf('pulse:Bb major:1:triad:guitar:phrase:1/3x3:2:60:beat', 4);
    const taps = held.plan.slots.map(({ seconds }, i) => seconds + (i === 7 ? 0.2 : 0));
    expect(said(taps, held).detail).toBe('Beat 2 in bar 2 came 200 ms late.');
  });

  it('is of nothing but taps', () => {
    const text = tapsText(due);
    for (const other of [`x${text}`, `${text} x`, `${text},5`, `${text} 5.55`])
      expect(judgementOf(card, other).onsets, other).toEqual([]);
    expect(judgementOf(card, text).onsets).toHaveLength(48);
  });

  it('points at one that is late', () => {
    const late = scattered(0.004).map((time, i) => (i === 19 ? time + 0.09 : time));
    expect(said(late)).toMatchObject({
      verdict: RIGHT,
      detail: 'The second note of beat 3 in bar 2 came 89 ms late.',
    });
  });

  it('makes two remarks at most, on what comes again and again before what came once', () => {
    const bent = (by: number) =>
      scattered(0.004).map((time, i) => time + (i % 3 === 1 ? by : 0) + (i === 30 ? 0.09 : 0));
    expect(said(bent(0.018)).detail).toMatch(
      /^Your second note comes 1\d ms late\. The first note of beat 3 in bar 3 came \d\d ms late\.$/,
    );
    const both = scattered(0.004).map((time, i) => time + [0, 0.02, -0.02][i % 3]!);
    expect(said(both).detail).toMatch(
      /^Your second note comes (19|20|21) ms late, the third note comes (19|20|21) ms early\.$/,
    );
    const drifting = bent(0.018).map((time) => time * 1.03);
    const answer = tapsText(drifting, 'measured');
    const { detail } = pulse.explain(card, WRONG, answer, 'english');
    expect(detail.match(/\./g)).toHaveLength(2);
  });

  it('is near where too few were tapped, and says how many', () => {
    expect(said(due.slice(0, 10))).toMatchObject({
      verdict: NEAR,
      title: 'Too few taps to tell',
      sentence: '10 of 48 taps were on the figure: tap on every note.',
      detail: 'This counts for nothing, and is asked again.',
      dots: [],
    });
    expect(pulse.judge(card, '')).toEqual(NEAR);
    expect(said(due.filter((_, i) => i % 6 !== 1)).sentence).toBe(
      'Even, but 8 of 48 notes had no tap, so it is asked again.',
    );
  });

  it('tells what was asked where the taps are not kept', () => {
    expect(pulse.explain(card, RIGHT, '', 'english')).toMatchObject({
      title: 'Even at 80',
      sentence: 'It is 48 taps of triplets at 80.',
      detail: '',
      otherSound: null,
    });
  });

  it('takes the error out with which strokes on the strings are heard', () => {
    const times = scattered(0.0175);
    const [strokes, taps] = [tapsText(times, 'struck'), tapsText(times)];
    expect(strokes).toBe(`struck ${taps}`);
    const spread = (answer: string) => judgementOf(card, answer).evenness!.fraction!;
    expect(spread(taps) ** 2 - spread(strokes) ** 2).toBeCloseTo(2 * (0.003 / 0.25) ** 2, 5);
    expect(pulse.judge(card, 'struck')).toEqual(NEAR);
  });

  it('says how late strokes come on the click, where the phone’s own delay is known, and else nothing', () => {
    const told = (by: number, made: 'struck' | 'measured', of = card) => {
      const answer = tapsText(
        scattered(0.004).map((time) => time + by),
        made,
      );
      return pulse.explain(of, pulse.judge(of, answer), answer, 'english').detail;
    };
    expect(told(0.04, 'measured')).toMatch(
      /^You come (39|40|41|42) ms late on the click, the phone’s delay taken out\.$/,
    );
    expect(told(-0.03, 'measured')).toMatch(/^You come (28|29|30|31) ms early on the click/);
    expect(told(0.04, 'struck')).toBe('');
    expect(told(0.008, 'measured')).toBe('');
    const late = judgementOf(
      card,
      tapsText(
        due.map((time) => time + 0.04),
        'measured',
      ),
    );
    expect(late.lag).toMatchObject({ change: expect.closeTo(0.04, 4), told: true });
    expect(late.match.pairs).toHaveLength(due.length);
  });

  it('is the same of taps however late all of them come, and whatever order they stand in', () => {
    const even = tapsText(due.toReversed().map((time) => time + 0.15));
    expect(pulse.judge(card, even)).toEqual(RIGHT);
  });
});

describe('the rhythm of a phrase', () => {
  const held = cardOf('pulse:Bb major:1:triad:guitar:phrase:1/3x3:2:60:beat', 4);
  const times = held.plan.slots.map(({ seconds }) => seconds);

  it('comes back until there are 48 notes, its last one held to the end of the bar', () => {
    expect(times.slice(0, 6)).toEqual(
      [0, 1 / 3, 2 / 3, 1, 4, 4 + 1 / 3].map((x) => expect.closeTo(x)),
    );
    expect(times).toHaveLength(48);
  });

  it('is judged by its steps, the held one among them', () => {
    expect(said(times, held)).toMatchObject({ verdict: RIGHT, title: 'Even at 60' });
    const bent = times.map((time, i) => (i % 4 === 1 ? time - 0.03 : time));
    expect(said(bent, held).detail).toBe('Your second note comes 30 ms early.');
    const late = times.map((time, i) => (i === 5 ? time + 0.12 : time));
    expect(said(late, held).detail).toContain('The second note of beat 1 in bar 2 came');
    const judgement = judgedTaps(times, held.plan, { allowed: 0.1 });
    // The held note is no step of a triplet.
    expect(stepsByPlace(judgement, held.plan).map(({ name, count }) => [name, count])).toEqual([
      ['1–2', 12],
      ['2–3', 12],
      ['3–1', 12],
    ]);
  });
});

describe('the figures of a lesson', () => {
  const of = (...lengths: readonly string[]) => {
    const phrases = lengths.map((last) => ({
      tempo: 60,
      notes: ['Bb3 for 1/3', 'D4', `F4 for ${last}`],
    }));
    const drills = [{ kind: 'pulse', figures: ['phrase'], tempos: [60], clicks: ['beat'] }];
    const items = itemsOf(phraseDeck({ version: 2, drills, phrases }));
    return items.map((item) => pulse.words.item(item as PulseItem));
  };

  it('are named apart where its phrases go by several rhythms', () => {
    expect(of('1')).toEqual(['the phrase’s rhythm at 60']);
    expect(of('1', '1')).toEqual(['the phrase’s rhythm at 60']);
    expect(of('1', '1', '2')).toEqual([
      'the rhythm of phrase 1 at 60',
      'the rhythm of phrase 3 at 60',
    ]);
  });
});

describe('the count-in, aloud', () => {
  it('has every word where there is time for it, else the beats alone', () => {
    const aloud = (name: string, tempo: number) =>
      countAloud(cardOf(`pulse:Bb major:1:triad:guitar:${name}:${tempo}:beat`).plan);
    expect(aloud('eighths', 60)).toEqual(['1', 'and', '2', 'and', '3', 'and', '4', 'and']);
    const beats3 = ['1', null, null, '2', null, null, '3', null, null, '4', null, null];
    expect(aloud('triplets', 80)).toEqual(beats3);
    expect(aloud('quarters', 140)).toEqual(['1', '2', '3', '4']);
  });

  it('has a word for every click that counts', () => {
    expect(countAloud(card.plan)).toHaveLength(card.plan.countIn.length);
  });
});

describe('taps against the grid', () => {
  const bent = due.map((time, i) => time + 0.05 - (i % 3 === 1 ? 0.03 : 0));
  const judgement = judgedTaps(bent, card.plan, { allowed: 0.1 });

  it('are told step by step', () => {
    const steps = stepsByPlace(judgement, card.plan);
    expect(steps.map(({ name, count, mean }) => [name, count, Math.round(1000 * mean)])).toEqual([
      ['1–2', 16, 220],
      ['2–3', 16, 280],
      ['3–1', 15, 250],
    ]);
    for (const { spread } of steps) expect(spread).toBeCloseTo(0, 9);
  });

  it('have no spread where there is one step, and are not told where there is none', () => {
    const [first, second, third, ...rest] = judgement.onsets;
    expect(rest.length).toBeGreaterThan(0);
    const told = (...onsets: (typeof first)[]) =>
      stepsByPlace({ ...judgement, onsets: onsets as typeof rest }, card.plan).map(
        ({ name, count, spread }) => [name, count, spread],
      );
    expect(told(first, second, third)).toEqual([
      ['1–2', 1, null],
      ['2–3', 1, null],
    ]);
    expect(told(first, third)).toEqual([]);
  });

  it('lie in their bars without what is late of all', () => {
    const taps = stripTaps(judgement, card.plan);
    expect(taps.map(({ bar }) => bar)).toEqual(due.map((_, i) => Math.floor(i / 12)));
    expect(taps[12]!.beat).toBeCloseTo(0, 9);
    expect(taps[13]!.beat).toBeCloseTo(1 / 3 - 0.04, 9);
  });
});
