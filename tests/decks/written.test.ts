import { describe, expect, test } from 'vitest';
import { itemsOf } from '../../src/cards/index.ts';
import { deckId, readDeck, writeDeck } from '../../src/decks/document.ts';
import { openLink } from '../../src/decks/envelope.ts';
import { sealLink } from '../../src/decks/seal.ts';
import { readLink } from '../../src/decks/link.ts';
import { deckLink } from '../../src/decks/deckLink.ts';
import { KIND_NAMES, sinceOf } from '../../src/decks/kinds.ts';
import { deckMark, readReport } from '../../src/decks/report.ts';
import { DOCUMENT_VERSION } from '../../src/decks/version.ts';
import { LESSONS, REPORTS } from './written.ts';

const BASE = 'https://skipwise.example/';

describe('a lesson’s link', () => {
  test('has been written in every version that is read', () => {
    const versions = new Set(LESSONS.map(({ version }) => version));
    expect([...versions], 'a lesson of each version, in written.ts').toEqual(
      Array.from({ length: DOCUMENT_VERSION }, (_, k) => k + 1),
    );
  });

  test('of the version that first had a kind asks for it', () => {
    for (const kind of KIND_NAMES.filter((name) => sinceOf(name) > 1))
      expect(LESSONS, `a lesson of version ${sinceOf(kind)} with ${kind}`).toContainEqual(
        expect.objectContaining({
          version: sinceOf(kind),
          items: expect.arrayContaining([expect.stringMatching(`^${kind}:`)]),
        }),
      );
  });

  test.each(LESSONS)('of version $version is the same lesson, with the same items', async (one) => {
    const opened = openLink('lesson', DOCUMENT_VERSION, one.link);
    expect(opened).toMatchObject({ version: one.version });
    const read = await readLink(one.link);
    if ('fault' in read) throw new Error(read.fault);
    expect(writeDeck(read.deck)).toEqual(one.document);
    expect(readDeck(one.document)).toEqual(read);
    expect(deckId(read.deck)).toBe(one.id);
    expect(itemsOf(read.deck).map(({ id }) => id)).toEqual(one.items);
    // A program of that day reads what is written of it today.
    expect(await deckLink(read.deck, BASE)).toBe(one.link);
  });

  test('of the next version says that it needs a newer program', async () => {
    const link = sealLink('lesson', BASE, DOCUMENT_VERSION + 1, new Uint8Array([1, 2, 3]));
    expect(await readLink(link)).toMatchObject({ fault: expect.stringMatching(/newer version/) });
  });
});

/** What every one of the reports was written to tell, whatever else its version can. */
const TOLD = {
  deck: deckMark(LESSONS[0]!.id),
  sender: 123_456_789,
  day: 20_782,
  minute: 19 * 60 + 5,
  asked: 61,
  askedAbout: [3, 8],
  question: 'Why is ii not IV?',
  name: 'Mareike',
};
/** Days of the last 28 with practice. */
const PRACTISED = [21, 23, 25, 27];

/** The first items, from the one that is forgotten soonest on. */
const FADING = [0, 1, 2, 3, 4];

describe('a report’s link', () => {
  test.each(REPORTS)('of version $version tells what it told', ({ version, link }) => {
    const read = readReport(link);
    if ('fault' in read) throw new Error(read.fault);
    const { report } = read;
    expect(report).toMatchObject(TOLD);
    expect(report.practised.flatMap((on, day) => (on ? [day] : []))).toEqual(PRACTISED);
    expect(report.seconds.spot).toBeCloseTo(3.2, 1);
    expect(report.items).toHaveLength(LESSONS[0]!.items.length);
    report.items.forEach((item, k) => {
      expect(item === null, `item ${k + 1}`).toBe(k % 6 === 5);
      if (!item) return;
      const isMissed = k % 4 === 2;
      expect(item.misses).toBe(isMissed ? 1 : 0);
      expect(item.takenFor).toBe(isMissed ? 4 : null);
      expect(item.slow).toBe(k % 7 === 3 && !isMissed);
    });
    // The sooner forgotten, the less is known.
    const known = FADING.map((k) => report.items[k]!.recall);
    expect(known).toEqual(known.toSorted((a, b) => a - b));
    expect(new Set(known).size).toBeGreaterThan(3);
    expect([report.firstAsked, report.firstRight]).toEqual(version < 3 ? [0, 0] : [22, 15]);
    expect(report.time.figures).toHaveLength(version < 4 ? 0 : 1);
  });

  test('of the next version says that it needs a newer program', () => {
    const next = sealLink('report', BASE, REPORTS.at(-1)!.version + 1, new Uint8Array([1, 2, 3]));
    expect(readReport(next)).toMatchObject({ fault: expect.stringMatching(/newer version/) });
  });
});
