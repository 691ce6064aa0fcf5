/**
 * Cards that sound, answered by who only hears them: what the app plays is recorded, its pitches are heard by McLeod's
 * method, and the key and the path are worked out from them by a theory library that is not the app's.
 */
import { expect, test, type Page } from '@playwright/test';
import { readDeck } from '../../src/decks/document.ts';
import { deckLink } from '../../src/decks/deckLink.ts';
import { recordingOf } from '../listening/played.ts';
import { hearing, playSamples } from './microphone.ts';
import { chordOf, dice, midiOn, placesFor, type Question } from './musician.ts';
import {
  answersKept,
  give,
  judged,
  next,
  openCard,
  placeOn,
  question,
  reloadKept,
} from './people.ts';
import {
  keyNamed,
  keysOf,
  notesOf,
  onsetsOf,
  pathIn,
  stackOf,
  tempoOf,
  triadsOf,
  type HeardKey,
  type HeardNote,
} from './sound/ear.ts';
import { recordPage, type Sounding, type Tape } from './sound/tape.ts';

test.use({ bypassCSP: true });

interface Lesson {
  readonly key: string;
  readonly capo?: number;
  readonly drill: { readonly kind: string; readonly [word: string]: unknown };
}

/** Takes a lesson of one drill, with everything recorded that sounds. */
async function take(page: Page, { key, capo = 0, drill }: Lesson): Promise<Tape> {
  const tape = await recordPage(page);
  const read = readDeck({
    version: 2,
    title: 'Quay side, by ear',
    key,
    instrument: { name: 'guitar', capo },
    drills: [drill],
  });
  if ('fault' in read) throw new Error(read.fault);
  await page.goto(await deckLink(read.deck, test.info().project.use.baseURL!));
  await page.getByRole('button', { name: 'Keep for later' }).click();
  return tape;
}

/** Takes a lesson and begins a round on it. */
async function begin(page: Page, lesson: Lesson): Promise<Tape> {
  const tape = await take(page, lesson);
  await page.locator('[data-do="start"]').click();
  return tape;
}

/** The button of an ear card that lets all be heard from the beginning. */
const hearAll = (page: Page) => openCard(page).locator('.hearing [data-do="hear"]');
const sounds = (page: Page) => openCard(page).locator('.hearing [data-do="stop"]');

/** Waits until what sounds is over. */
async function over(page: Page): Promise<void> {
  await hearAll(page).waitFor();
}

/** How unevenly strings are plucked that should be evenly, in seconds between the shortest and the longest step. */
function unevenness(sounding: Sounding): number {
  const onsets = onsetsOf(sounding);
  const steps = onsets.slice(1).map((at, i) => at - onsets[i]!);
  return Math.max(...steps) - Math.min(...steps);
}

/** Whether all of it is on the tape, and even, as all is here: where a busy machine held sound up, it is heard anew. */
const isClear = (sounding: Sounding) => sounding.whole && unevenness(sounding) < 0.02;

/** Taps a button and hears what comes of it: the last soundings. */
async function hear(page: Page, tape: Tape, name: string, count = 1): Promise<Sounding[]> {
  for (let turn = 0; ; turn++) {
    const mark = await tape.mark();
    await openCard(page).getByRole('button', { name, exact: true }).click();
    await sounds(page).waitFor();
    await over(page);
    const heard = (await tape.since(mark)).slice(-count);
    if (turn === 3 || heard.every(isClear)) return heard;
  }
}

/** What an ear card sounds by itself: its key, and what is asked. */
async function heardByItself(
  page: Page,
  tape: Tape,
  again = 'Hear the phrase',
): Promise<Sounding[]> {
  await over(page);
  const heard = (await tape.since()).slice(-2);
  return heard.every(isClear) ? heard : hear(page, tape, again, 2);
}

/** The key that a cadence tells of those that a card could be in: the one that it says it is in. */
function keyIn(cadence: Sounding, asked: Question): HeardKey {
  expect(unevenness(cadence)).toBeLessThan(0.02);
  const told = keysOf(triadsOf(cadence));
  const named = keyNamed(asked.key);
  expect(told, `the cadence before a phrase in ${asked.key}`).toContainEqual(named);
  // Natural and harmonic minor are led home alike; no other two scales are.
  expect(told.length).toBeLessThanOrEqual(named.scale.includes('minor') ? 2 : 1);
  return named;
}

/** Even notes at so many quarter notes a minute, within two hundredths. */
function expectTempo(
  notes: readonly HeardNote[],
  rhythm: 'triplets' | 'eighths',
  tempo: number,
): void {
  const heard = tempoOf(notes, rhythm === 'eighths' ? 2 : 3);
  expect(Math.abs(heard / tempo - 1), `${heard} for ${tempo}`).toBeLessThan(0.02);
}

const midis = (notes: readonly HeardNote[]) => notes.map(({ midi }) => midi);

/** The lines that sounded last since a mark. */
const lastLines = async (tape: Tape, mark: number, count: number) =>
  (await tape.since(mark)).slice(-count).map((one) => midis(notesOf(one)));

/** What sounds with a verdict: these lines, one after the other, and nothing after them. */
async function expectLines(
  page: Page,
  tape: Tape,
  mark: number,
  lines: readonly (readonly number[])[],
): Promise<void> {
  const last = () => lastLines(tape, mark, lines.length);
  await expect.poll(last, { timeout: 20_000 }).toEqual(lines);
  await page.waitForTimeout(800);
  expect(await last()).toEqual(lines);
}

/** Notes as `data-notes` has them: `62@0 66@1/3`, at a tempo. */
async function shownNotes(page: Page): Promise<number[]> {
  const notes = await page.locator('[data-notes]').getAttribute('data-notes');
  return notes!.split(' ').map((note) => Number(note.split('@')[0]));
}

const TRACED = [
  { key: 'Bb major', capo: 0, tempo: 72, rhythm: 'triplets', contours: ['turn'], degrees: [2, 5] },
  { key: 'G minor', capo: 0, tempo: 96, rhythm: 'eighths', contours: ['up'], degrees: [1, 5] },
  { key: 'D dorian', capo: 2, tempo: 84, rhythm: 'triplets', contours: ['skip'], degrees: [1, 4] },
  {
    key: 'F# harmonic minor',
    capo: 0,
    tempo: 66,
    rhythm: 'triplets',
    contours: ['down'],
    degrees: [1, 7],
  },
] as const;

for (const { key, capo, ...drill } of TRACED) {
  test(`a phrase in ${key}, capo ${capo}, is traced by ear alone`, async ({ page }) => {
    const sizes = ['triad'];
    const tape = await begin(page, { key, capo, drill: { kind: 'trace', sizes, ...drill } });
    for (const right of [true, false]) {
      const asked = (await question(page))!;
      const [cadence, phrase] = await heardByItself(page, tape);
      const inKey = keyIn(cadence!, asked);
      const notes = notesOf(phrase!);
      for (const { cents } of notes) expect(Math.abs(cents)).toBeLessThan(5);
      expectTempo(notes, drill.rhythm, drill.tempo);
      const path = pathIn(inKey, notes);
      expect(asked.answers).toContain(path);

      const taken = right ? path : asked.answers.find((answer) => answer !== path)!;
      const mark = await tape.mark();
      await give(page, taken);
      expect(await judged(page)).toBe(right ? 'right' : 'wrong');
      expect(await shownNotes(page)).toEqual(midis(notes));
      if (right) await expectLines(page, tape, mark, [midis(notes)]);
      else {
        await expect
          .poll(async () => pathsIn(inKey, await lastLines(tape, mark, 2)), { timeout: 20_000 })
          .toEqual([path, taken]);
      }
      await next(page);
    }
  });
}

const pathsIn = (key: HeardKey, lines: readonly (readonly number[])[]) =>
  lines.map((line) =>
    pathIn(
      key,
      line.map((midi) => ({ midi })),
    ),
  );

test('the key, the phrase and both are heard again, and slower at the same pitch', async ({
  page,
}) => {
  const drill = { kind: 'trace', sizes: ['seventh'], contours: ['skip'], degrees: [1, 5] };
  const tape = await begin(page, { key: 'Eb mixolydian', drill: { ...drill, tempo: 80 } });
  const asked = (await question(page))!;
  const [cadence, phrase] = await heardByItself(page, tape);
  keyIn(cadence!, asked);
  const notes = notesOf(phrase!);
  expectTempo(notes, 'triplets', 80);

  const [slow] = await hear(page, tape, 'Slower');
  expect(midis(notesOf(slow!))).toEqual(midis(notes));
  expectTempo(notesOf(slow!), 'triplets', 0.6 * 80);
  const [alone] = await hear(page, tape, 'Phrase alone');
  expect(midis(notesOf(alone!))).toEqual(midis(notes));
  expectTempo(notesOf(alone!), 'triplets', 80);
  const [key] = await hear(page, tape, 'Key alone');
  expect(triadsOf(key!)).toEqual(triadsOf(cadence!));
  const [first, second] = await hear(page, tape, 'Hear the phrase', 2);
  expect(triadsOf(first!)).toEqual(triadsOf(cadence!));
  expect(midis(notesOf(second!))).toEqual(midis(notes));
});

/** The pitch classes of a line, each once, in their order. */
const classes = (line: readonly number[]) =>
  [...new Set(line.map((midi) => midi % 12))].toSorted((a, b) => a - b);
const sorted = (line: readonly number[]) => line.toSorted((a, b) => a - b);

const SEEN = [
  { key: 'Bb major', capo: 0 },
  { key: 'C# minor', capo: 0 },
  { key: 'A lydian', capo: 3 },
] as const;

for (const { key, capo } of SEEN) {
  test(`what is spotted in ${key}, capo ${capo}, sounds with its verdict, and what it was taken for`, async ({
    page,
  }) => {
    const drill = { kind: 'spot', sizes: ['triad'], strings: ['5-4'], frets: [1, 7] };
    const tape = await begin(page, { key, capo, drill: { ...drill, degrees: [1, 2, 5] } });
    for (const right of [true, false]) {
      const asked = (await question(page))!;
      const inKey = keyNamed(asked.key);
      const shape = sorted(asked.dots.map((dot) => midiOn(asked.tuning, dot)));
      const degree = asked.answers.find(
        (answer) => String(sorted(stackOf(inKey, Number(answer), 3))) === String(classes(shape)),
      )!;
      const taken = right ? degree : asked.answers.find((answer) => answer !== degree)!;
      const mark = await tape.mark();
      await give(page, taken);
      expect(await judged(page)).toBe(right ? 'right' : 'wrong');
      if (right) await expectLines(page, tape, mark, [shape]);
      else {
        await expect
          .poll(async () => (await lastLines(tape, mark, 2)).map(classes), { timeout: 20_000 })
          .toEqual([classes(shape), sorted(stackOf(inKey, Number(taken), 3))]);
        expect((await lastLines(tape, mark, 2))[0]).toEqual(shape);
      }
      await next(page);
    }
  });

  test(`what is placed in ${key}, capo ${capo}, sounds as it is tapped and with its verdict`, async ({
    page,
  }) => {
    const drill = { kind: 'place', sizes: ['triad'], strings: ['4-3'], frets: [1, 8] };
    const tape = await begin(page, { key, capo, drill: { ...drill, degrees: [1, 4, 6] } });
    for (const right of [true, false]) {
      const asked = (await question(page))!;
      const places = placesFor(asked, right, dice(Number(asked.seed)));
      const tapped = places.map((place) => midiOn(asked.tuning, place));
      // What a card before it sounded rings no more.
      await page.waitForTimeout(200);
      const mark = await tape.mark();
      await placeOn(page, places[0]!).click();
      await page.waitForTimeout(300);
      expect(midis(notesOf((await tape.since(mark)).at(-1)!)).at(-1)).toBe(tapped[0]);
      for (const place of places.slice(1)) await placeOn(page, place).click();
      expect(await judged(page)).toBe(right ? 'right' : 'wrong');
      if (right) await expectLines(page, tape, mark, [sorted(tapped)]);
      else {
        const chord = sorted(chordOf(asked.chord!));
        const lines = () => lastLines(tape, mark, 2);
        await expect
          .poll(async () => (await lines())[1], { timeout: 20_000 })
          .toEqual(sorted(tapped));
        expect(classes((await lines())[0]!)).toEqual(chord);
      }
      await next(page);
    }
  });
}

/** Plays a line to the page's microphone in triplets at 72: a rest between two notes of it would be played back too. */
async function playBack(page: Page, line: readonly number[]): Promise<void> {
  const step = 60 / 72 / 3;
  const notes = line.map((midi, i) => ({
    midi,
    time: 0.2 + i * step,
    until: 0.2 + (i + 0.92) * step,
  }));
  await playSamples(page, recordingOf(notes, step * line.length + 1.2, { noise: 0 }));
}

test('a line is played back by who only hears it; after a wrong note both are heard', async ({
  page,
}) => {
  test.setTimeout(120_000);
  await hearing(page);
  const line = { kind: 'echo', sizes: ['triad'], contours: ['turn'], degrees: [1, 4], tempo: 72 };
  const tape = await take(page, { key: 'A major', drill: line });
  await page.locator('[data-do="guitar"]').click();
  await page.locator('[data-do="start"]').click();
  await page.locator('[data-do="listen"]').click();
  await page.locator('[data-do="skip"]').click();
  await page.getByRole('heading', { name: 'Five clicks' }).waitFor();
  await page.locator('[data-do="skip"]').click();
  for (const right of [true, false]) {
    const asked = (await question(page))!;
    expect(asked.kind).toBe('echo');
    const [cadence, heard] = await heardByItself(page, tape, 'Hear the line');
    const inKey = keyIn(cadence!, asked);
    const notes = midis(notesOf(heard!));
    expectTempo(notesOf(heard!), 'triplets', 72);
    expect(pathIn(inKey, notesOf(heard!))).not.toContain('?');
    await page.getByText('Listening. Play when you like.').waitFor();
    const mark = await tape.mark();
    const played = right ? notes : notes.with(1, notes[1]! + 1);
    await playBack(page, played);
    expect(await judged(page)).toBe(right ? 'right' : 'wrong');
    await page.locator('[role="status"][data-verdict]').click();
    await expectLines(page, tape, mark, right ? [notes] : [notes, played]);
    await next(page);
  }
});

test('Play along sounds the phrase of its card, slower too, and leads back to the card with nothing lost', async ({
  page,
}) => {
  const drill = { kind: 'trace', sizes: ['triad'], contours: ['turn'], degrees: [1, 4, 5] };
  const tape = await begin(page, { key: 'Ab major', drill: { ...drill, tempo: 84 } });
  const asked = (await question(page))!;
  const [cadence, phrase] = await heardByItself(page, tape);
  const path = pathIn(keyIn(cadence!, asked), notesOf(phrase!));
  await give(page, path);
  expect(await judged(page)).toBe('right');
  const along = page.getByRole('button', { name: 'Play along' });
  await along.click();
  const dialog = page.getByRole('dialog', { name: 'Play along' });
  const strip = dialog.getByRole('button', { name: /^Note \d+: degree/ });
  await expect(strip).toHaveCount(notesOf(phrase!).length);
  for (const [k, degree] of path.split(' ').entries())
    await expect(strip.nth(k)).toHaveAccessibleName(
      new RegExp(`^Note ${k + 1}: degree ${degree},`),
    );

  const played = async () => {
    const mark = await tape.mark();
    await dialog.getByRole('button', { name: 'Play', exact: true }).click();
    await dialog.getByRole('button', { name: 'Stop', exact: true }).waitFor();
    await dialog.getByRole('button', { name: 'Play', exact: true }).waitFor();
    return notesOf((await tape.since(mark)).at(-1)!);
  };
  for (const name of ['count in', 'click'])
    await dialog.getByRole('checkbox', { name, exact: true }).uncheck();
  const asTaught = await played();
  expect(midis(asTaught)).toEqual(midis(notesOf(phrase!)));
  expectTempo(asTaught, 'triplets', 84);
  for (let k = 0; k < 4; k++) await dialog.getByRole('button', { name: 'Slower' }).click();
  await expect(dialog.getByRole('status', { name: 'Tempo' })).toHaveText(/= 60/);
  const slow = await played();
  expect(midis(slow)).toEqual(midis(notesOf(phrase!)));
  expectTempo(slow, 'triplets', 60);

  // What answers and sounds a card does nothing to the one beneath.
  for (const key of ['1', '2', ' ']) await page.keyboard.press(key);
  await dialog.getByRole('button', { name: 'Close' }).click();
  await expect(dialog).toHaveCount(0);
  await expect(along).toBeFocused();
  await expect(page.locator('[data-verdict]')).toHaveAttribute('data-verdict', 'right');
  await expect(page.locator(`[data-item="${asked.item}"]`)).toBeVisible();

  // Left open, and the page loaded anew: the answer is there once, and the round goes on.
  await along.click();
  await reloadKept(page);
  const after = (await question(page))!;
  expect(after.item).not.toBe(asked.item);
  expect((await answersKept(page)).split(asked.item)).toHaveLength(2);
});
