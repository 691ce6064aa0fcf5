/** How one comes to each screen, as a student or a teacher would. */
import type { Page } from '@playwright/test';
import { itemsOf } from '../../src/cards/index.ts';
import type { Deck } from '../../src/decks/deck.ts';
import { readDeck } from '../../src/decks/document.ts';
import { kindsOf, type PhraseKind } from '../../src/decks/kinds.ts';
import { deckLink } from '../../src/decks/deckLink.ts';
import { dice } from '../browser/musician.ts';
import {
  answerCards,
  answerTo,
  give,
  judged,
  newCard,
  next,
  openCard,
  openPart,
  phraseLesson,
  plan,
  question,
  roundEnd,
  shareLink,
  startLesson,
  verdict,
  writeAnswers,
  type Answer,
} from '../browser/people.ts';
import { WITH_GUITAR } from './guitar.ts';

type ComeTo = (page: Page, base: string) => Promise<void>;

const NECK = { sizes: ['triad'], strings: ['5-4', '4-3-2'], frets: [1, 8] };

/** A lesson of the evening class, with what its cards ask. */
function lesson(drills: readonly object[], instrument?: object): Deck {
  const read = readDeck({
    version: 2,
    title: 'Thursday class: down the harbour stairs',
    note: 'Strings 5 and 4 first. Sing the third before you play it.',
    key: 'Bb major',
    drills,
    ...(instrument && { instrument }),
  });
  if ('fault' in read) throw new Error(read.fault);
  return read.deck;
}

const DRILLS: Readonly<Record<string, object>> = {
  spot: { kind: 'spot', ...NECK },
  place: { kind: 'place', ...NECK },
  trace: { kind: 'trace', sizes: ['triad'], contours: ['up', 'down'], tempo: 72 },
  pulse: { kind: 'pulse', figures: ['triplets'], tempos: [72], clicks: ['beat'] },
};

/** A neck as long as any: its cards ask for all of it. */
const LONG = {
  name: 'long neck',
  tuning: ['E2', 'A2', 'D3', 'G3', 'B3', 'E4'],
  frets: 24,
  scaleLength: 648,
};
const LEFT = { name: 'guitar', leftHanded: true };
const SEVEN = { name: '7-string guitar' };
const EIGHT = { name: '8-string guitar' };

/** Cards of a kind on another instrument. */
const cardOn = (kind: 'spot' | 'place', instrument: object, frets: readonly number[]): ComeTo =>
  async function comeTo(page, base) {
    const drill = { ...NECK, kind, frets };
    await startLesson(page, await deckLink(lesson([drill], instrument), base));
    await question(page);
  };

const whole = (base: string) =>
  deckLink(lesson([DRILLS.spot!, DRILLS.place!, DRILLS.trace!]), base);

async function card(kind: string, base: string): Promise<string> {
  const drill = DRILLS[kind];
  if (drill) return deckLink(lesson([drill]), base);
  return phraseLesson([kind as PhraseKind], base);
}

/** Some answers given, so that there is something to be seen. */
async function practised(page: Page, base: string): Promise<void> {
  await startLesson(page, await whole(base));
  await answerCards(page, 4);
  await answerCards(page, 2, false);
  await answerCards(page, 6);
}

async function leave(page: Page): Promise<void> {
  await openCard(page).or(newCard(page)).or(roundEnd(page)).waitFor();
  await page.getByRole('button', { name: /Leave the round|Back to today/ }).click();
  await page.locator('[data-do="start"]').first().waitFor();
}

async function reported(page: Page, base: string): Promise<string> {
  await practised(page, base);
  await leave(page);
  await page.goto('#/send');
  await page.getByLabel('Your name').fill('Mareike');
  return page.getByLabel('The report’s link').inputValue();
}

/** An answer on a day to each item to be named on strings 5 and 4: right, unless it is of one of these degrees. */
function answersOn(day: number, deck: Deck, wrong: readonly number[] = []): Answer[] {
  return itemsOf(deck)
    .filter(({ kind, strings }) => kind === 'spot' && strings === '5-4')
    .map(({ id, degree }) => [day, id, wrong.includes(degree) ? String((degree % 7) + 1) : null]);
}

/** A student who practised on five of the last eight days, and not too well; the lesson is in three. */
async function someDays(page: Page, base: string): Promise<void> {
  const day = 86_400_000;
  const lessonDay = new Date(Date.now() + 3 * day).toISOString().slice(0, 10);
  const deck = { ...lesson([DRILLS.spot!, DRILLS.place!, DRILLS.trace!]), lessonDay };
  await page.goto(await deckLink(deck, base));
  await page.getByRole('button', { name: 'Keep for later' }).click();
  await page.getByText('asked so far').waitFor();
  const answers = [0, 1, 3, 5, 7].flatMap((at) => answersOn(at, deck, at < 3 ? [5, 6, 7] : [7]));
  await writeAnswers(page, answers, Date.now() - 8 * day);
  await page.reload();
  await page.locator('.ready .weeks').waitFor();
}

const KINDS = [...Object.keys(DRILLS), ...kindsOf('phrase')].filter(
  (kind, i, all) => all.indexOf(kind) === i,
);

const cards = KINDS.flatMap((kind): [string, ComeTo][] => [
  [
    `card-${kind}`,
    async (page, base) => {
      await startLesson(page, await card(kind, base));
      await question(page);
    },
  ],
  [
    `card-${kind}-verdict`,
    async (page, base) => {
      await startLesson(page, await card(kind, base));
      await (kind === 'pulse' ? keepTime(page) : answerWrongly(page));
      await verdict(page).waitFor();
    },
  ],
]);

/** Answers until the verdict is that it was wrong: of what is only heard nothing says which answer is. */
async function answerWrongly(page: Page): Promise<void> {
  for (;;) {
    const asked = (await question(page))!;
    await give(page, answerTo(asked, false, dice(Number(asked.seed))));
    if ((await judged(page)) === 'wrong') return;
    await next(page);
  }
}

/** Taps triplets at 72, as evenly as a timer does. */
async function keepTime(page: Page): Promise<void> {
  await question(page);
  await page.getByRole('button', { name: 'Count me in' }).press('Enter');
  await page.locator('.count-words.past').waitFor({ state: 'attached' });
  for (let tap = 0, begun = Date.now(); tap < 48; tap++) {
    await page.waitForTimeout(Math.max(0, begun + (tap * 60_000) / 72 / 3 - Date.now()));
    await page.keyboard.press('j');
  }
}

export const SCREENS: Readonly<Record<string, ComeTo>> = {
  'first-visit': async (page) => {
    await page.goto('');
    await page.locator('[data-do="start"]').first().waitFor();
  },
  'lesson-offered': async (page, base) => {
    await page.goto(await whole(base));
    await page.locator('[data-do="start"]').waitFor();
  },
  'today-begun': async (page, base) => {
    await practised(page, base);
    await leave(page);
  },
  'today-week': async (page, base) => {
    await someDays(page, base);
  },
  'today-muted': async (page, base) => {
    await page.goto('#/settings');
    await page.getByLabel('Mute').check();
    await practised(page, base);
    await leave(page);
  },
  'today-enough': async (page, base) => {
    const deck = lesson([{ ...NECK, kind: 'spot', strings: ['5-4'] }]);
    await page.goto(await deckLink(deck, base));
    await page.getByRole('button', { name: 'Keep for later' }).click();
    await page.getByText('asked so far').waitFor();
    const answers = [0, 1, 2, 4, 5].flatMap((day) => answersOn(day, deck));
    await writeAnswers(page, answers, Date.now() - 5 * 86_400_000);
    await page.reload();
    await page.getByText('Enough for today').waitFor();
  },
  'new-card': async (page, base) => {
    await startLesson(page, await whole(base));
    await newCard(page).waitFor();
  },
  ...Object.fromEntries(cards),
  ...WITH_GUITAR,
  'round-end': async (page, base) => {
    await startLesson(
      page,
      await deckLink(lesson([{ ...NECK, kind: 'spot', strings: ['5-4'] }]), base),
    );
    await answerCards(page, 2, false);
    await answerCards(page, 99);
  },
  'look-back': async (page, base) => {
    await startLesson(
      page,
      await deckLink(lesson([{ ...NECK, kind: 'spot', strings: ['5-4'] }]), base),
    );
    await answerCards(page, 2, false);
    await answerCards(page, 99);
    await page.getByRole('button', { name: 'Look back over the cards' }).click();
  },
  'round-missed': async (page, base) => {
    await startLesson(page, await deckLink(lesson([{ ...NECK, kind: 'place' }]), base));
    await answerCards(page, 3);
    await answerCards(page, 99, false);
  },
  'look-back-card': async (page, base) => {
    await startLesson(page, await deckLink(lesson([{ ...NECK, kind: 'place' }]), base));
    await answerCards(page, 2, false);
    await answerCards(page, 99);
    await page.getByRole('button', { name: 'Look back over the cards' }).click();
    await page.getByLabel('Missed only').check();
    await page.getByRole('listitem').getByRole('button').first().click();
  },
  minute: async (page, base) => {
    await page.goto(await whole(base));
    await page.getByRole('button', { name: 'Keep for later' }).click();
    await page.getByText('asked so far').waitFor();
    await page.goto('#/minute');
    await page.getByRole('heading', { name: 'A free minute' }).waitFor();
  },
  known: async (page, base) => {
    await practised(page, base);
    await leave(page);
    await page.goto('#/known');
    await page.locator('[data-tuning]').waitFor();
  },
  neck: async (page, base) => {
    await practised(page, base);
    await leave(page);
    await page.goto('#/neck');
    await page.locator('[data-tuning]').waitFor();
  },
  'neck-long': async (page) => {
    await page.goto('#/neck/Bb-major/24-frets');
    await page.locator('[data-tuning]').waitFor();
  },
  'neck-eight': async (page) => {
    await page.goto('#/neck/Bb-major/8-string-guitar');
    await page.locator('[data-tuning]').waitFor();
  },
  'neck-shape': async (page) => {
    await page.goto('#/neck/Bb-major/triad-2');
    await page.getByRole('combobox', { name: 'Where' }).selectOption('shape 4–3');
    await page.locator('.shape-moves').waitFor();
  },
  'neck-left': async (page) => {
    await page.goto('#/neck/Bb-major/left-handed');
    await page.locator('[data-tuning]').waitFor();
  },
  'card-spot-long': cardOn('spot', LONG, [1, 24]),
  'card-place-long': cardOn('place', LONG, [1, 24]),
  'card-spot-left': cardOn('spot', LEFT, NECK.frets),
  'card-place-left': cardOn('place', LEFT, NECK.frets),
  'card-spot-seven': cardOn('spot', SEVEN, NECK.frets),
  'card-place-seven': cardOn('place', SEVEN, NECK.frets),
  'card-spot-eight': cardOn('spot', EIGHT, NECK.frets),
  'card-place-eight': cardOn('place', EIGHT, NECK.frets),
  phrases: async (page, base) => {
    await startLesson(page, await phraseLesson(['follow'], base));
    await leave(page);
    await page.goto('#/phrases');
    await page.getByRole('heading').first().waitFor();
  },
  'play-along': async (page, base) => {
    await startLesson(page, await card('trace', base));
    await answerWrongly(page);
    await page.getByRole('button', { name: 'Play along' }).click();
  },
  lessons: async (page, base) => {
    await practised(page, base);
    await leave(page);
    await page.goto('#/lessons');
    await page.getByRole('heading').first().waitFor();
  },
  settings: async (page) => {
    await page.goto('#/settings');
    await page.getByRole('heading', { name: 'Sound and names' }).waitFor();
  },
  send: async (page, base) => {
    await reported(page, base);
  },
  report: async (page, base) => {
    await page.goto(await reported(page, base));
    await page.getByRole('heading').first().waitFor();
  },
  class: async (page, base) => {
    await page.goto(await reported(page, base));
    await page.getByRole('heading').first().waitFor();
    await page.goto('#/class');
    await page.getByRole('heading').first().waitFor();
  },
  teach: async (page) => {
    await plan(page, {});
  },
  'teach-cards': async (page) => {
    await plan(page, {});
    await openPart(page, 'Cards');
  },
  'teach-chords': async (page) => {
    await plan(page, { chords: ['triads', 'sevenths'], strings: ['5–4', '4–3', '3–2'] });
    await openPart(page, 'Chords');
  },
  'teach-day': async (page) => {
    await plan(page, { title: 'Thursday class', note: 'Sing the third before you play it.' });
    await openPart(page, 'Next lesson');
    await page.getByRole('button', { name: 'in 7 days' }).click();
  },
  'teach-phrase': async (page) => {
    await writtenPhrase(page);
    await page.getByRole('button', { name: 'Put it in the lesson' }).click();
    await openPart(page, 'Cards');
  },
  'teach-drills': async (page) => {
    await plan(page, {});
    await page.getByText(/^Drills one by one/).click();
    await page.getByText(/^Instrument/).click();
  },
  'teach-from-reports': async (page, base) => {
    await page.goto(await reported(page, base));
    await page.getByRole('heading').first().waitFor();
    await page.goto('#/class');
    await page.getByRole('button', { name: /^Next lesson from/ }).click();
    await page.locator('.sentence').waitFor();
  },
  'drill-desk': async (page) => {
    await plan(page, {});
    await page.getByText(/^Drills one by one/).click();
    await page.getByRole('button', { name: /^Change drill 1/ }).click();
  },
  'try-a-card': async (page) => {
    await plan(page, {});
    await page.getByRole('button', { name: 'Try a card' }).click();
    await newCard(page).waitFor();
  },
  'my-lessons': async (page) => {
    await plan(page, { tonic: 'D', title: 'Thursday class' });
    await page.goto('#/teach/lessons');
    await page.getByRole('heading', { name: 'Your lessons' }).waitFor();
  },
  share: async (page) => {
    await plan(page, { title: 'Thursday class' });
    await shareLink(page);
  },
  /** Begun where link and code stand beside the form; on smaller screens the form stands alone. */
  'share-beside': async (page) => {
    await page.setViewportSize({ width: 1280, height: 800 });
    await plan(page, { title: 'Thursday class' });
    await shareLink(page);
  },
  'phrase-desk-empty': async (page) => {
    await plan(page, {});
    await page.getByRole('button', { name: 'Add a phrase' }).click();
  },
  'phrase-desk': async (page) => {
    await writtenPhrase(page);
  },
  ...Object.fromEntries(
    ['Text', 'Outlines', 'Variations', 'More', 'Change this note'].map((name): [string, ComeTo] => [
      `phrase-desk-${name.toLowerCase().replaceAll(' ', '-')}`,
      async (page) => {
        await writtenPhrase(page);
        if (name === 'Change this note')
          await page.getByRole('button', { name: /^Note 2:/ }).click();
        await page.getByRole('button', { name, exact: true }).click();
        if (name === 'Variations') await page.getByText('In the same key').click();
        await page.waitForTimeout(300);
      },
    ]),
  ),
  'phrase-desk-compared': async (page) => {
    await writtenPhrase(page);
    await page.getByRole('button', { name: 'Variations', exact: true }).click();
    await page.getByText('In the same key').click();
    await page.getByRole('button', { name: 'Compare' }).first().click();
  },
};

const STAIRS = [
  'e|-------3-6-3-------5-----|-11----------|',
  'B|-----4-------4-6-10------|----13-10----|',
  'G|---5---------------------|----------10-|',
  'D|-------------------------|-------------|',
  'A|-------------------------|-------------|',
  'E|-------------------------|-------------|',
].join('\n');

/** A phrase as a teacher types it, read and ready to be put in. */
async function writtenPhrase(page: Page): Promise<void> {
  await plan(page, {});
  await page.getByRole('button', { name: 'Add a phrase' }).click();
  await page.getByRole('button', { name: 'Text', exact: true }).click();
  await page.getByLabel('Tablature, string 1 on top').fill(STAIRS);
  await page.locator('.bench [data-index="12"]').waitFor();
  await page.getByRole('button', { name: 'Done' }).click();
}
