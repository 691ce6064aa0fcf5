/** What a student and a teacher do with the page, in as many words as they would use. */
import { AxeBuilder } from '@axe-core/playwright';
import { expect, type Locator, type Page } from '@playwright/test';
import type { KindName, PhraseKind } from '../../src/decks/kinds.ts';
import { deckLink } from '../../src/decks/deckLink.ts';
import { deckOf, PLAIN_DRAFT, type Draft } from '../../src/making/draft.ts';
import type { Instrument } from '../../src/neck/instrument.ts';
import type { Key } from '../../src/theory/key.ts';
import { phraseDeck, STAIRS } from '../cards/phrases.ts';
import { degreeSeen, dice, placesFor, type Place, type Question } from './musician.ts';

/** What a teacher chooses; whatever is left out stays as the screen has it. */
export interface Wishes {
  /** As the screen names it: `E♭`. */
  readonly tonic?: string;
  readonly scale?: string;
  readonly chords?: readonly ('triads' | 'sevenths' | 'ninths')[];
  readonly kinds?: readonly ('spot' | 'place' | 'trace')[];
  /** As the screen names them: `5–4`. */
  readonly strings?: readonly string[];
  readonly frets?: readonly [number, number];
  readonly title?: string;
  readonly note?: string;
  /** `2026-12-01` */
  readonly lessonDay?: string;
}

const SIZE_OF = { triads: 'triad', sevenths: 'seventh', ninths: 'ninth' } as const;
const KINDS = {
  spot: 'name what is seen',
  place: 'place what is named',
  trace: 'trace what is heard',
};

/** A lesson small enough that one round asks all of it: seven items to name. */
export const SMALL: Wishes = {
  chords: ['triads'],
  kinds: ['spot'],
  strings: ['5–4'],
  frets: [1, 7],
};

/** Fills in the form under Teach, on the server of the tests or on another one. */
export async function plan(page: Page, wishes: Wishes, base = ''): Promise<void> {
  await page.goto(`${base}#/teach`);
  await expect(page.getByRole('heading', { name: 'A lesson' })).toBeVisible();
  if (wishes.tonic || wishes.scale) await openPart(page, 'Key');
  if (wishes.tonic) await chooseOne(page, 'Key', wishes.tonic, 'more');
  if (wishes.scale) await chooseOne(page, 'Scale', wishes.scale, 'other scale');
  if (wishes.chords) {
    await openPart(page, 'Chords');
    await chooseOnly(page, 'Chords', wishes.chords);
  }
  if (wishes.strings) {
    await openPart(page, 'Strings');
    await chooseOnly(page, 'Strings', wishes.strings);
  }
  if (wishes.frets) {
    await openPart(page, 'Frets');
    const frets = page.getByRole('group', { name: 'Frets' }).getByRole('combobox');
    await frets.first().selectOption(String(wishes.frets[0]));
    await frets.last().selectOption(String(wishes.frets[1]));
  }
  // Last: where no card asks for chords there is nothing to say of them.
  if (wishes.kinds)
    await chooseCards(
      page,
      wishes.kinds.map((kind) => KINDS[kind]),
    );
  if (wishes.title || wishes.note) await openWords(page);
  if (wishes.title) await page.getByLabel('Title').fill(wishes.title);
  if (wishes.note) await page.getByLabel('A note to the student').fill(wishes.note);
  if (wishes.lessonDay) {
    await openPart(page, 'Next lesson');
    await page.getByLabel('Next lesson', { exact: true }).fill(wishes.lessonDay);
  }
}

/** Opens what a part of the lesson's sentence can be changed with. */
export async function openPart(page: Page, name: string): Promise<void> {
  const part = page.locator('.sentence').getByRole('button', { name: new RegExp(`^${name}: `) });
  if ((await part.getAttribute('aria-expanded')) === 'false') await part.click();
}

/** Asks nothing but these kinds of card, of those that need no guitar. */
export async function chooseCards(page: Page, names: readonly string[]): Promise<void> {
  await openPart(page, 'Cards');
  await chooseOnly(page, 'Cards', names);
}

/** Lays the phrase's text over its desk and writes it. */
export async function writeTablature(page: Page, text: string): Promise<void> {
  await page.getByRole('button', { name: 'Text', exact: true }).click();
  await page.getByLabel('Tablature, string 1 on top').fill(text);
}

/** Unfolds the lesson's title and note. */
export async function openWords(page: Page): Promise<void> {
  if (!(await page.getByLabel('Title').isVisible())) {
    await page.getByText(/^Title and note/).click();
  }
}

async function chooseOne(page: Page, group: string, name: string, more: string) {
  const choices = page.getByRole('group', { name: group, exact: true });
  const choice = choices.getByRole('radio', { name, exact: true });
  if ((await choice.count()) === 0) await choices.getByRole('button', { name: more }).click();
  await choice.check();
}

async function chooseOnly(page: Page, group: string, names: readonly string[]) {
  for (const choice of await page.getByRole('group', { name: group }).getByRole('checkbox').all()) {
    const name = await choice.evaluate((input: HTMLInputElement) => input.labels![0]!.textContent!);
    await choice.setChecked(names.includes(name));
  }
}

/** The link in a field, once it is made. */
export async function linkIn(field: Locator): Promise<string> {
  await expect(field).toHaveValue(/#\/\w+\//);
  return field.inputValue();
}

/** The link of the lesson that the form holds. */
export async function shareLink(page: Page): Promise<string> {
  await page.getByRole('button', { name: 'Share the link' }).click();
  return linkIn(page.getByLabel('The lesson’s link'));
}

/** Makes a lesson and gives its link. */
export async function makeLesson(page: Page, wishes: Wishes, base = ''): Promise<string> {
  await plan(page, wishes, base);
  return shareLink(page);
}

/** Three items to name: a whole round of them is short. */
export const THREE: LinkWishes = { ...SMALL, degrees: [1, 2, 5] };

/** What a link can be wished beside what is chosen on the screen. */
interface LinkWishes extends Omit<Wishes, 'kinds'> {
  readonly kinds?: readonly KindName[];
  readonly degrees?: readonly number[];
  readonly instrument?: Instrument;
}

/** The link of the lesson that a teacher makes by these wishes, without a tap: for tests of what comes after it. */
export function lessonLink(wishes: LinkWishes, base: string): Promise<string> {
  const { tonic, scale, chords, kinds, strings, frets, ...others } = wishes;
  const made: Draft = {
    ...PLAIN_DRAFT,
    ...others,
    ...(chords && { sizes: chords.map((chord) => SIZE_OF[chord]) }),
    ...(kinds && { drills: kinds }),
    ...(strings && { strings: strings.map((set) => set.split('–').map(Number)) }),
    ...(frets && { frets }),
  };
  const { key } = PLAIN_DRAFT;
  const named = {
    tonic: tonic?.replace('♭', 'b').replace('♯', '#') ?? key.tonic,
    scale: (scale as Key['scale'] | undefined) ?? key.scale,
  };
  return deckLink(deckOf({ ...made, key: named }), base);
}

/** The link of a lesson that drills one phrase in these ways, faster than it is taught: nobody has to wait for it. */
export function phraseLesson(kinds: readonly PhraseKind[], base: string): Promise<string> {
  const deck = phraseDeck({
    drills: kinds.map((kind) => ({ kind })),
    phrases: [{ ...STAIRS, tempo: 132 }],
  });
  return deckLink(deck, base);
}

/** Opens a lesson's link and begins with it. */
export async function startLesson(page: Page, link: string): Promise<void> {
  await page.goto(link);
  await page.locator('[data-do="start"]').click();
}

/** The card that waits for an answer. */
export const openCard = (page: Page) =>
  page.locator('[data-kind]:not([data-new], :has([data-verdict]))');

/** The card that shows what is new, before it is asked. */
export const newCard = (page: Page) => page.locator('[data-kind][data-new]');

/** What the card asks, as soon as one waits for an answer, past all that is only shown; null when the round is over. */
export async function question(page: Page): Promise<Question | null> {
  const shown = openCard(page).or(newCard(page)).or(roundEnd(page));
  for (;;) {
    await shown.waitFor();
    const asked = await shown.evaluate(read);
    if (!asked?.isNew) return asked;
    await next(page);
    await expect(page.locator(`[data-new][data-item="${asked.item}"]`)).toHaveCount(0);
  }
}

/** The heading under which a round's end says what it came to. */
export const roundEnd = (page: Page) => page.getByRole('heading', { name: 'Done for now' });

/** What a card says of itself, and whether it is only shown; null of what is no card. Runs in the page. */
function read(root: HTMLElement): (Question & { readonly isNew: boolean }) | null {
  const { kind, item, seed, key, chord, strings, frets } = root.dataset;
  if (kind === undefined) return null;
  const all = (selector: string) => [...root.querySelectorAll<HTMLElement>(selector)];
  return {
    isNew: root.dataset.new !== undefined,
    kind,
    item: item!,
    seed: seed!,
    key: key!,
    chord: chord ?? null,
    strings: strings?.split(' ').map(Number) ?? [],
    frets: frets?.split('-').map(Number) ?? [],
    tuning: all('[data-tuning]')[0]?.dataset.tuning?.split(' ') ?? [],
    dots: all('[data-dot]').map(({ dataset }) => ({
      string: Number(dataset.string),
      fret: Number(dataset.fret),
    })),
    answers: all('[data-answer]').map(({ dataset }) => dataset.answer!),
  };
}

export const placeOn = (page: Page, { string, fret }: Place) =>
  page.locator(`[data-string="${string}"][data-fret="${fret}"]`);

/** Answers by one tap, or by tapping places, without waiting for the verdict. */
export async function give(page: Page, answer: string | readonly Place[]): Promise<void> {
  if (typeof answer === 'string') await page.locator(`[data-answer="${answer}"]`).click();
  else for (const place of answer) await placeOn(page, place).click();
}

/** Where the verdict stands once it has come. */
export const verdict = (page: Page) => page.locator('[role="status"][data-verdict]');

/** The verdict, once it has come. */
export async function judged(page: Page): Promise<'right' | 'wrong'> {
  await verdict(page).waitFor();
  return (await verdict(page).getAttribute('data-verdict')) as 'right' | 'wrong';
}

/** An answer that is right or wrong as wished; any where it is no degree, or one that is heard: nothing of it is to be seen. */
export function answerTo(
  asked: Question,
  right: boolean,
  pick: ReturnType<typeof dice>,
): string | Place[] {
  if (['place', 'follow'].includes(asked.kind)) return placesFor(asked, right, pick);
  if (asked.kind === 'fill' || !asked.answers.includes('1')) return pick(asked.answers);
  const degree = degreeSeen(asked);
  return right ? degree : pick(asked.answers.filter((other) => other !== degree));
}

/** Answers the card that waits and sees its verdict; gives what was asked, or null at the round's end. */
export async function answerOne(page: Page, right = true): Promise<Question | null> {
  const asked = await question(page);
  if (!asked) return null;
  await give(page, answerTo(asked, right, dice(Number(asked.seed))));
  await judged(page);
  return asked;
}

export const next = (page: Page) => page.locator('[data-do="next"]').click();

/** Answers so many cards and goes on after each; gives what was asked. */
export async function answerCards(page: Page, count: number, right = true): Promise<Question[]> {
  const asked: Question[] = [];
  while (asked.length < count) {
    const one = await answerOne(page, right);
    if (!one) break;
    asked.push(one);
    await next(page);
  }
  return asked;
}

/** Everything that the page keeps on the device, as text. */
export async function kept(page: Page): Promise<string> {
  return page.evaluate(async () => {
    const done = <T>(request: IDBRequest<T>) =>
      new Promise<T>((resolve, reject) => {
        request.addEventListener('success', () => resolve(request.result));
        request.addEventListener('error', () => reject(request.error!));
      });
    const found = [];
    for (const { name, version } of await indexedDB.databases()) {
      const database = await done(indexedDB.open(name!, version));
      for (const store of database.objectStoreNames) {
        const all = database.transaction(store).objectStore(store);
        found.push({
          name,
          store,
          keys: await done(all.getAllKeys()),
          values: await done(all.getAll()),
        });
      }
      database.close();
    }
    return JSON.stringify(found);
  });
}

/** The same once all is there that comes in a quiet moment: what keeps answers gives the device its id. */
export async function keptWhenQuiet(page: Page): Promise<string> {
  await expect.poll(() => kept(page)).toContain('"device"');
  return kept(page);
}

/** Loads the page anew, once what was changed is on the device: reading stands in line behind what is being written. */
export async function reloadKept(page: Page): Promise<void> {
  await kept(page);
  await page.reload();
}

/** The lines of the log: the answers that are kept, and nothing else (a round knows its items too). */
export async function answersKept(page: Page): Promise<string> {
  const stores = JSON.parse(await kept(page)) as { keys: unknown[]; values: unknown[] }[];
  const chunks = stores.flatMap(({ keys, values }) =>
    values.filter((_, i) => Array.isArray(keys[i]) && keys[i][0] === 'log'),
  );
  return JSON.stringify(chunks);
}

/** How many reviews are kept, counted by what Today says of the lesson. */
export const askedSoFar = (page: Page) => page.getByText(/\d+ of \d+ asked so far/);

/** Counts the notes and clicks that begin to sound. */
export async function countSounds(page: Page): Promise<() => Promise<number>> {
  await page.addInitScript(() => {
    const started = { count: 0 };
    Object.assign(globalThis, { started });
    const { start } = AudioBufferSourceNode.prototype;
    AudioBufferSourceNode.prototype.start = function (...when) {
      if (this.context instanceof AudioContext) started.count++;
      return start.apply(this, when);
    };
  });
  return () =>
    page.evaluate(() => (globalThis as unknown as { started: { count: number } }).started.count);
}

/** axe in the page itself, which is one frame: it opens another page each time where it has to put frames together. */
export const axeOn = (page: Page) => new AxeBuilder({ page }).setLegacyMode();

/** The rules of axe that what is dark can break and what is light keeps. */
export const COLOUR_RULES = ['color-contrast', 'link-in-text-block'] as const;

/** What axe finds of what it is asked on every screen. */
export async function faults(page: Page) {
  const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
  return (await axeOn(page).withTags(tags).analyze()).violations;
}

/** An answer as days after a first one, the item, and what it was taken for; null: right. */
export type Answer = readonly [day: number, item: string, takenFor: string | null];

/** Writes answers into the page's log in place of what it has; the page knows of them once it is loaded again. */
export async function writeAnswers(
  page: Page,
  answers: readonly Answer[],
  start: number,
): Promise<void> {
  const lines = answers.map(([day, item, takenFor], k) => {
    const right = takenFor === null;
    const at = start + day * 86_400_000 + k * 20_000;
    const timed = [4000, 0, 1, 0, right ? 3 : 1];
    return JSON.stringify([1, k + 1, item, 2, at, 0, +right, takenFor, ...timed]);
  });
  await page.evaluate(writeLog, lines.join('\n'));
}

async function writeLog(lines: string): Promise<void> {
  const done = <T>(request: IDBRequest<T>) =>
    new Promise<T>((resolve, reject) => {
      request.addEventListener('success', () => resolve(request.result));
      request.addEventListener('error', () => reject(request.error!));
    });
  const database = await done(indexedDB.open('skipwise'));
  const store = database.transaction('everything', 'readwrite').objectStore('everything');
  // A page in which nothing was answered has given it no id yet.
  const device: unknown = (await done(store.get('device'))) ?? 'a device';
  await done(store.put(device, 'device'));
  await done(store.put(lines, ['log', String(device), 0]));
  database.close();
}
