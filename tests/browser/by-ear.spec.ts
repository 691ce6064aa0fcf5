/** Cards answered by what comes out of the page and nothing else: pitches by one library, key and path by another. */
import { expect, test, type Page } from '@playwright/test';
import { heard, keyOf, pitchOf, recording } from './ear.ts';
import { chordOf, degreeSeen, midiOn, pathOf, placesFor, dice } from './musician.ts';
import {
  give,
  judged,
  makeLesson,
  next,
  openCard,
  question,
  startLesson,
  verdict,
  type Wishes,
} from './people.ts';

const lesson = (page: Page, wishes: Wishes) =>
  makeLesson(page, { chords: ['triads'], strings: ['4–3–2'], frets: [1, 9], ...wishes });

/** `62@0 66@0`, as `pathOf` reads it. */
const asNotes = (pitches: readonly number[]) => pitches.map((midi) => `${midi}@0`).join(' ');

const tap = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();

/** Plays the phrase once more, alone: its pitches, and seconds from each to the next. */
async function alone(page: Page, button: string) {
  await tap(page, button);
  const notes = await heard(page, 1500);
  return {
    pitches: notes.map((note) => pitchOf(note)),
    gaps: notes.slice(1).map(({ at }, i) => at - notes[i]!.at),
  };
}

for (const [tonic, scale, key] of [
  ['E♭', 'major', 'Eb major'],
  ['F♯', 'minor', 'F# minor'],
] as const) {
  test(`a path in ${key} is found by its sound alone`, async ({ page }) => {
    test.setTimeout(120_000);
    await recording(page);
    await startLesson(page, await lesson(page, { tonic, scale, kinds: ['trace'] }));
    await question(page);
    const all = await heard(page);
    // Shown first, asked later: the last cadence and line are those of the card that waits.
    const card = (await question(page))!;
    await tap(page, 'Key alone');
    expect(keyOf(await heard(page, 1500))).toBe(key);
    expect(all.length).toBeGreaterThan(4);

    const line = await alone(page, 'Phrase alone');
    const path = pathOf(asNotes(line.pitches), key);
    expect(card.answers).toContain(path);

    const slower = await alone(page, 'Slower');
    expect(slower.pitches).toEqual(line.pitches);
    slower.gaps.forEach((gap, i) => expect(gap / line.gaps[i]!).toBeCloseTo(1 / 0.6, 1));

    await page.locator('[data-do="hear"]').click();
    const whole = await heard(page);
    expect(keyOf(whole.slice(0, 4))).toBe(key);
    expect(whole.slice(4).map((note) => pitchOf(note))).toEqual(line.pitches);

    await give(page, path);
    expect(await judged(page)).toBe('right');
    const once = await heard(page, 1500);
    expect(once.map((note) => pitchOf(note))).toEqual(line.pitches);
  });
}

test('a wrong path is followed by the right line, and then by the one that was tapped', async ({
  page,
}) => {
  test.setTimeout(120_000);
  await recording(page);
  await startLesson(page, await lesson(page, { tonic: 'B♭', kinds: ['trace'] }));
  const card = (await question(page))!;
  await heard(page);
  const line = await alone(page, 'Phrase alone');
  const path = pathOf(asNotes(line.pitches), 'Bb major');
  const other = card.answers.find((answer) => answer !== path)!;
  await give(page, other);
  expect(await judged(page)).toBe('wrong');
  const both = (await heard(page)).map((note) => pitchOf(note));
  expect(both.slice(0, line.pitches.length)).toEqual(line.pitches);
  expect(pathOf(asNotes(both.slice(line.pitches.length)), 'Bb major')).toBe(other);
});

test('a shape that was named wrong sounds as its dots lie, and then as what was named', async ({
  page,
}) => {
  test.setTimeout(120_000);
  await recording(page);
  await startLesson(page, await lesson(page, { tonic: 'A♭', kinds: ['spot'] }));
  const card = (await question(page))!;
  const right = degreeSeen(card);
  const wrong = card.answers.find((answer) => answer !== right)!;
  await give(page, wrong);
  expect(await judged(page)).toBe('wrong');
  await tap(page, 'Hear both');
  const both = (await heard(page)).map((note) => pitchOf(note));
  const dots = card.dots.map((dot) => midiOn(card.tuning, dot));
  expect(both.slice(0, 3).toSorted()).toEqual(dots.toSorted());
  const triad = [0, 2, 4].map((third) => ((Number(wrong) - 1 + third) % 7) + 1);
  expect(pathOf(asNotes(both.slice(3)), card.key)).toBe(triad.join(' '));
});

test('a chord that was placed sounds as it was placed; wrong, as it should have been, and as it was', async ({
  page,
}) => {
  test.setTimeout(120_000);
  await recording(page);
  await startLesson(page, await lesson(page, { tonic: 'D', kinds: ['place'] }));
  for (const right of [true, false]) {
    const card = (await question(page))!;
    const places = placesFor(card, right, dice(3));
    await give(page, places);
    expect(await judged(page)).toBe(right ? 'right' : 'wrong');
    await heard(page, 1500);
    await tap(page, right ? 'Hear it' : 'Hear both');
    const sounded = (await heard(page)).map((note) => pitchOf(note));
    const tapped = places.map((one) => midiOn(card.tuning, one)).toSorted((a, b) => a - b);
    const chord = chordOf(card.chord!).toSorted();
    expect(
      sounded
        .slice(0, 3)
        .map((midi) => midi % 12)
        .toSorted(),
    ).toEqual(chord);
    expect(right ? sounded : sounded.slice(3)).toEqual(tapped);
    await next(page);
    await expect(verdict(page).or(openCard(page))).not.toHaveCount(0);
  }
});
