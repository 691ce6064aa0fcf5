/** From the samples of a microphone to the verdict on a card: the follower, the answer and the judge together. */
import { describe, expect, it } from 'vitest';
import { itemOf, KINDS } from '../../src/cards/index.ts';
import { answerOf } from '../../src/cards/playing/answer.ts';
import type { PlayingCard } from '../../src/cards/playing/card.ts';
import { isDecided } from '../../src/cards/playing/judge.ts';
import { PLAYED, samplesOf } from '../browser/guitar/recordings.ts';
import { heardIn } from '../listening/hearing.ts';

/** The verdict on a line as it was played, in a word, and what is said of it. */
function verdictOf(id: string, line: readonly number[], manner = {}) {
  const kind = KINDS[itemOf(id)!.kind];
  const card = kind.ask(itemOf(id)!, 2) as PlayingCard;
  const notes = card.notes.map(({ midi }) => midi);
  const performance = heardIn(samplesOf(line, manner), { notes, order: 'given' });
  if (!isDecided(performance)) return ['unheard', ''];
  const answer = answerOf(performance, notes, card.tempo !== null);
  const verdict = kind.judge(card, answer);
  const { title, detail } = kind.explain(card, verdict, answer, 'english');
  return [verdict.right ? 'right' : 'wrong', title, ...(detail === '' ? [] : [detail])];
}

// Cm on strings 5 and 4, C3 E♭3 G3; and a phrase of C4 E♭4 G4.
const PLAY = 'play:Bb major:2:triad:guitar:5-4:1-7:up';
const ECHO = 'echo:Bb major:2:triad:guitar:72 ii 3/5 2/4 1/3';
const TURN = 'play:Bb major:2:triad:guitar:5-4:1-7:turn';
const [LOW, BACK, HIGH] = [
  [48, 51, 55],
  [48, 51, 55, 51, 48],
  [60, 63, 67],
];

describe('a line that is heard', () => {
  it.each([
    ['right', PLAY, PLAYED.right(LOW), {}, ['right', 'Every note right']],
    ['begun late', PLAY, PLAYED.right(LOW), { begun: 6 }, ['right', 'Every note right']],
    ['with a wrong semitone', PLAY, PLAYED.semitone(LOW), {}, ['wrong', 'E, not E♭']],
    ['in a wrong octave', PLAY, PLAYED.octave(LOW), {}, ['wrong', 'E♭ an octave too high']],
    ['with the last note missing', PLAY, LOW.slice(0, 2), {}, ['wrong', 'G was missing']],
    ['with a note missing on the way', TURN, PLAYED.missing(BACK), {}, ['wrong', 'E♭ was missing']],
    ['with its middle note missing', PLAY, PLAYED.missing(LOW), {}, ['wrong', 'E♭ was missing']],
    ['echoed', ECHO, PLAYED.right(HIGH), { step: 0.3 }, ['right', 'Every note right']],
    ['echoed with a wrong semitone', ECHO, PLAYED.semitone(HIGH), {}, ['wrong', 'E, not E♭']],
  ])('%s is told so', (_, id, line, manner, [verdict, title]) => {
    expect(verdictOf(id, line, manner).slice(0, 2)).toEqual([verdict, title]);
  });

  it('is even at a tempo where it was played so', () => {
    const [verdict, , detail] = verdictOf(`${TURN}:60`, BACK, { step: 0.5 });
    expect(verdict).toBe('right');
    expect(detail).toMatch(/^(As even as can be heard|Even: \d %|\d % of a step uneven)/);
  });
});
