import { expect, it } from 'vitest';
import { analyse } from '../../src/theory/analysis/analysis.ts';
import { sameChord } from '../../src/theory/analysis/candidates.ts';
import tunedOn from './data/phrases-long.json';
import late from './data/phrases-long-late.json';
import sealed from './data/phrases-long-sealed.json';
import { read, type Told } from './analysis-phrases.ts';

const percent = (part: number, whole: number) => (100 * part) / whole;

/**
 * Of the ninths and elevenths, how many are found as one group, and how many more the desk offers to join; of all groups
 * given, how many are sure (.9 and more), and how often those are right. In percent.
 */
function longOnes(phrases: readonly Told[]) {
  let [all, found, offered, given, sure, right] = [0, 0, 0, 0, 0, 0];
  for (const { phrase, key, bar, pickup, groups: truth } of phrases) {
    const { groups } = analyse(phrase, key, { bar, pickup });
    for (const { from, to, chord } of truth) {
      if (chord.size !== 'ninth' && chord.size !== 'eleventh') continue;
      all++;
      if (groups.some((group) => group.from === from && group.to === to)) found++;
      else if (
        groups.some(
          (group, i) =>
            group.from === from &&
            groups[i + 1]?.to === to &&
            group.joined &&
            sameChord(group.joined.chord, chord),
        )
      )
        offered++;
    }
    given += groups.length;
    for (const { from, to, chord, confidence } of groups) {
      if (confidence < 0.9) continue;
      sure++;
      if (truth.some((is) => is.from === from && is.to === to && sameChord(is.chord, chord)))
        right++;
    }
  }
  return {
    all,
    found: percent(found, all),
    offered: percent(offered, all),
    sure: percent(sure, given),
    sureAndRight: percent(right, sure),
  };
}

const toldOf = ({ triplets, others }: typeof tunedOn) =>
  [...triplets, ...others].map((one) => read(one));

// Where a run of thirds cost as much as any other notes 71 and 67 % of the first two were found, and what was sure was right
// in 88 of 100. Nine in ten are still to be found.
it.each([
  ['looked at while weights were chosen', toldOf(tunedOn), 85, 95],
  ['only counted', toldOf(sealed), 84, 95],
  ['written late and only counted', late.phrases.map((one) => read(one)), 77, 95],
] as const)('long arpeggios %s are found as one, or offered', (which, told, found, right) => {
  const got = longOnes(told);
  console.info(`long arpeggios ${which}: ${JSON.stringify(got)}`);
  expect(got.all).toBeGreaterThan(60);
  expect(got.found).toBeGreaterThanOrEqual(found);
  expect(got.sureAndRight).toBeGreaterThanOrEqual(right);
});
