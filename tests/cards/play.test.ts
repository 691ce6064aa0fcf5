import { describe, expect, it } from 'vitest';
import { play } from '../../src/cards/play/index.ts';
import type { PlayCard } from '../../src/cards/play/ask.ts';
import { answerOf } from '../../src/cards/playing/answer.ts';
import { midiAt } from '../../src/neck/place.ts';
import { itemIn } from './items.ts';

const cardOf = (id: string, seed = 2): PlayCard => play.ask(itemIn(play, id)!, seed);

const midis = ({ notes }: PlayCard) => notes.map(({ midi }) => midi).join(' ');

const said = (card: PlayCard, answer: string) => {
  const verdict = play.judge(card, answer);
  const { title, sentence, detail } = play.explain(card, verdict, answer, 'english');
  return { right: verdict.right, title, sentence, detail };
};

describe('play', () => {
  it('goes up, down, and up and back', () => {
    const way = (name: string) => midis(cardOf(`play:Bb major:2:triad:guitar:5-4:1-7:${name}`));
    expect(way('up')).toBe('48 51 55');
    expect(way('down')).toBe('55 51 48');
    expect(way('turn')).toBe('48 51 55 51 48');
  });

  it('lies where its dots are, on many seeds', () => {
    for (let seed = 0; seed < 20; seed++) {
      const card = cardOf('play:Bb major:5:seventh:guitar:4-3-2-1:3-7:turn:60', seed);
      expect(card.line.map((place) => midiAt(card.instrument, place)).join(' ')).toBe(midis(card));
    }
  });

  it('is shown on even seeds and named on odd ones', () => {
    const named = (seed: number) => cardOf('play:Bb major:2:triad:guitar:5-4:1-7:up', seed).named;
    expect([named(4), named(5)]).toEqual([false, true]);
  });

  it('is shown on odd seeds too where only a shape lies there that does not follow from its first place', () => {
    for (let seed = 0; seed < 6; seed++) {
      // F2 A2 C4 or F2 A3 C4: of either a hand may take another octave first.
      const card = cardOf('play:Bb major:5:triad:guitar:6-3:1-5:up', seed);
      expect(card.named).toBe(false);
      expect(['41 45 60', '41 57 60']).toContain(midis(card));
    }
  });

  it('follows from its first place and its chord where it is only named', () => {
    for (let seed = 1; seed < 40; seed += 2) {
      const card = cardOf('play:Bb major:1:seventh:guitar:4-3-2-1:5-9:up', seed);
      if (!card.named) continue;
      const steps = card.notes.slice(1).map(({ midi }, i) => midi - card.notes[i]!.midi);
      expect(Math.min(...steps)).toBeGreaterThan(0);
      expect(Math.max(...steps)).toBeLessThan(12);
    }
  });

  it('has the notes of a phrase as the phrase has them, at leisure or at a tempo', () => {
    const leisure = cardOf('play:Bb major:2:triad:guitar:ii 3/5 2/4 1/3 2/4');
    expect(midis(leisure)).toBe('60 63 67 63');
    expect(leisure.tempo).toBeNull();
    expect(cardOf('play:Bb major:2:triad:guitar:72 ii 3/5=1/2 2/4 1/3=1').tempo).toBe(72);
  });

  it('reads no id that it would not write', () => {
    for (const rest of [
      '5-4:1-7',
      '5-4:1-7:sideways',
      '5-4:1-7:up:9',
      '5-4:1-7:up:072',
      '5-4:1-7:up:72:more',
      '5-4:1-2:up',
      'V 3/5 2/4 1/3',
      'ii 3/5',
      '72',
    ]) {
      expect(itemIn(play, `play:Bb major:2:triad:guitar:${rest}`), rest).toBeNull();
    }
  });

  // C3 E♭3 G3.
  it.each([
    ['48 51 55', true, 'Every note right', 'It goes C E♭ G.', ''],
    ['48 52 55', false, 'E, not E♭', 'Note 2 was E, not E♭.', ''],
    ['48 51 67', false, 'G an octave too high', 'Note 3 was G an octave too high.', ''],
    ['60 63 67', false, 'An octave too high', 'All of it was an octave too high.', ''],
    ['48 - 55', false, 'E♭ was missing', 'Note 2 was missing.', ''],
    ['46 - 55', false, '1 of 3 notes right', 'Note 1 was B♭, not C; note 2 was missing.', ''],
    ['48 ? 53', false, 'F, not G', 'Note 3 was F, not G.', ''],
    ['48 +50 51 55', true, 'Every note right', 'It goes C E♭ G.', 'Beside them D was heard.'],
    ['48 51', false, 'Not yet', 'It goes C E♭ G.', ''],
    ['36 39 43', false, 'An octave too low', 'All of it was an octave too low.', ''],
    ['72 75 79', false, '2 octaves too high', 'All of it was 2 octaves too high.', ''],
    [
      '48 +50 +58 51 55',
      true,
      'Every note right',
      'It goes C E♭ G.',
      'Beside them D and B♭ were heard.',
    ],
  ])('says of %s what was heard', (answer, right, title, sentence, detail) => {
    const card = cardOf('play:Bb major:2:triad:guitar:5-4:1-7:up');
    expect(said(card, answer)).toEqual({ right, title, sentence, detail });
  });

  // The first three of what went wrong are told, the rest counted.
  it.each([
    [
      '50 51 53 51 -',
      '2 of 5 notes right',
      'Note 1 was D, not C; note 3 was F, not G; note 5 was missing.',
    ],
    [
      '50 53 53 51 -',
      '1 of 5 notes right',
      'Note 1 was D, not C; note 2 was F, not E♭; note 3 was F, not G; and 1 more.',
    ],
    [
      '50 53 53 - -',
      '0 of 5 notes right',
      'Note 1 was D, not C; note 2 was F, not E♭; note 3 was F, not G; and 2 more.',
    ],
  ])('says of %s, played up and back, %s', (answer, title, sentence) => {
    const card = cardOf('play:Bb major:2:triad:guitar:5-4:1-7:turn');
    expect(said(card, answer)).toMatchObject({ right: false, title, sentence });
  });

  // C3 E♭3 G3 E♭3 C3 in eighths at 60: half a second each.
  it.each([
    ['48@0 51@0.5 55@1 51@1.5 48@2', 'As even as can be heard.'],
    ['48@0 51@0.5 55@1.3 51@1.8 48@2.3', 'Note 3 came late.'],
    ['48@0 51@0.3 55@1.1 51@1.4 48@2.4', 'Uneven:'],
    ['48@0 51@0.6 55@1.2 51@1.8 48@2.4', 'You played at about 50, asked was 60.'],
  ])('tells the time of %s apart from its notes, which are right', (answer, words) => {
    const card = cardOf('play:Bb major:2:triad:guitar:5-4:1-7:turn:60');
    const { right, detail } = said(card, answer);
    expect(right).toBe(true);
    expect(detail).toContain(words);
  });

  // Of two steps nobody knows which is the longer one; of three the middle one tells.
  it.each([
    ['up', '48@0 51@0.3 55@1.9', false],
    ['turn', '48@0 51@0.5 55@1 51@2 -', true],
    ['turn', '48@0 51@0.5 55@1 51@1.7 -', false],
  ])('of a line played %s at %s says that a note came late: %s', (way, answer, isTold) => {
    const card = cardOf(`play:Bb major:2:triad:guitar:5-4:1-7:${way}:60`);
    expect(said(card, answer).detail.includes('came late')).toBe(isTold);
  });

  it('sounds what was played beside what was asked, with a gap where a note was missing', () => {
    const card = cardOf('play:Bb major:2:triad:guitar:5-4:1-7:up');
    const answer = '48 - 54';
    const { sound, otherSound } = play.explain(card, play.judge(card, answer), answer, 'english');
    expect(sound.notes.map(({ midi, at }) => [midi, at])).toEqual([
      [48, 0],
      [51, 0.5],
      [55, 1],
    ]);
    expect(otherSound!.notes.map(({ midi, at }) => [midi, at])).toEqual([
      [48, 0],
      [54, 1],
    ]);
  });

  // Beats at the card's own tempo: at 90 the second note, played after 0.4 s, is 0.6 of a beat on.
  it.each([
    ['5-4:1-7:up', '48 52 55', 84, [0, 0.5, 1]],
    ['5-4:1-7:up:90', '48@0 52@0.4 55@0.6', 90, [0, 0.6, 0.9]],
    ['5-4:1-7:up:120', '48@0 52@0.4 55@0.6', 120, [0, 0.8, 1.2]],
  ])('%s played %s sounds so at %i', (rest, answer, tempo, times) => {
    const card = cardOf(`play:Bb major:2:triad:guitar:${rest}`);
    const { sound, otherSound } = play.explain(card, play.judge(card, answer), answer, 'english');
    expect([sound.tempo, otherSound!.tempo]).toEqual([tempo, tempo]);
    expect(sound.notes.map(({ at }) => at)).toEqual([0, 0.5, 1]);
    expect(otherSound!.notes.map(({ midi }) => midi)).toEqual([48, 52, 55]);
    otherSound!.notes.forEach(({ at }, i) => expect(at).toBeCloseTo(times[i]!, 9));
  });
});

describe('what was heard, as an answer', () => {
  it('has a word for each note asked, and extras where they came', () => {
    const performance = {
      notes: [
        { verdict: 'right', time: 12.5 },
        { verdict: 'wrong', time: 13, heard: 52 },
        { verdict: 'missing' },
        { verdict: 'unheard' },
      ] as const,
      extras: [
        { time: 12, heard: 40, after: -1 },
        { time: 13.2, heard: 64, after: 1 },
      ],
    };
    const asked = [48, 51, 55, 58];
    expect(answerOf(performance, asked, false)).toBe('+40 48 52 +64 - ?');
    expect(answerOf(performance, asked, true)).toBe('+40 48@0.000 52@0.500 +64 - ?');
  });
});
