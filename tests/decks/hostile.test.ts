/**
 * Generated links and files through everything that decodes what comes in: none throws, none takes more than 100 ms of
 * processor, and what is accepted can be shown. `npm run soak` takes a million of them, every other run a tenth of that.
 */
import { deflateRawSync, inflateRawSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { instrumentWords, drillWords, itemPlace } from '../../src/app/deckWords.ts';
import { itemsOf, KINDS } from '../../src/cards/index.ts';
import type { Deck } from '../../src/decks/deck.ts';
import { readDeck, writeDeck } from '../../src/decks/document.ts';
import { openLink } from '../../src/decks/envelope.ts';
import { sealLink } from '../../src/decks/seal.ts';
import { readLink } from '../../src/decks/link.ts';
import { deckLink } from '../../src/decks/deckLink.ts';
import { readMidi, writeMidi } from '../../src/decks/notation/midi.ts';
import { readTablature } from '../../src/decks/notation/tablature-reader.ts';
import { readReport, reportLink } from '../../src/decks/report.ts';
import { fits, pictureOf } from '../../src/practice/picture.ts';
import { GUITAR } from '../../src/neck/instrument.ts';
import { BackupFault, readBackup, writeBackup } from '../../src/store/backup.ts';
import { seeded, type Random } from '../../src/theory/random.ts';
import { beats } from '../../src/theory/rhythm.ts';
import { phraseDeck } from '../cards/phrases.ts';
import { anyReview } from '../store/reviews.ts';
import { decks } from './arbitrary.ts';

/** How many `npm run soak` takes; nothing where it is not that which runs. */
const SOAK = Number(process.env.SOAK ?? 0);
const COUNT = SOAK || 100_000;
const SLOW = 100;

const key = { tonic: 'Bb', scale: 'major' } as const;
const sample = [phraseDeck(), ...fc.sample(decks, { numRuns: 40, seed: 5 })];
const REPORT = {
  deck: 1,
  sender: 2,
  day: 20_700,
  minute: 600,
  practised: Array.from({ length: 28 }, (_, i) => i % 3 > 0),
  asked: 90,
  firstAsked: 40,
  time: { figures: [], minutes: null },
  firstRight: 30,
  seconds: { spot: 3.2 },
  items: Array.from({ length: 40 }, (_, i) =>
    i % 5 === 0
      ? null
      : { recall: 0.5, ease: 0, answers: 4, slow: false, misses: i % 3, takenFor: null },
  ),
  askedAbout: [3, 7],
  question: 'Why is vii so weak?',
  name: 'Mareike',
};

/** Letters that mean something to one decoder or another, beside any. */
const LETTERS = [...'0123456789-=.,:~@!*#b♭ /"{}[]|speotrvlyu\u001f\u202e\u0000é𝄞e'];

function mutatedText(text: string, other: string, random: Random): string {
  let now = text;
  for (let times = 1 + random.below(4); times > 0; times--) {
    const at = random.below(now.length + 1);
    const cut = random.below(3) === 0 ? random.below(20) : random.below(2);
    const from = random.below(other.length + 1);
    const put =
      random.below(3) === 0 ? other.slice(from, from + random.below(30)) : random.pick(LETTERS);
    now = now.slice(0, at) + put.repeat(random.below(40) === 0 ? 50 : 1) + now.slice(at + cut);
  }
  return now;
}

function mutatedBytes(bytes: Uint8Array, random: Random): Uint8Array<ArrayBuffer> {
  const all = [...bytes];
  for (let times = 1 + random.below(4); times > 0; times--) {
    const put = Array.from({ length: random.below(4) }, () => random.below(256));
    all.splice(random.below(all.length + 1), random.below(4), ...put);
  }
  return Uint8Array.from(all);
}

const bodyOf = (name: 'lesson' | 'report', link: string, version: number) => {
  const opened = openLink(name, version, link);
  if ('fault' in opened) throw new Error(opened.fault);
  return opened;
};

/** Shows what of an accepted lesson a screen shows, and some of its cards. */
function show(deck: Deck, random: Random): void {
  expect(readDeck(JSON.parse(JSON.stringify(writeDeck(deck))))).toHaveProperty('deck');
  instrumentWords(deck.instrument);
  deck.drills.forEach(drillWords);
  const items = itemsOf(deck);
  if (items.length === 0) return;
  const item = random.pick(items);
  itemPlace(item);
  const kind = KINDS[item.kind];
  const card = kind.ask(item, random.below(2 ** 31));
  kind.answers(card);
  kind.explain(card, kind.judge(card, '1'), '1', 'english');
}

interface Decoder {
  /** Out of each hundred. */
  readonly share: number;
  make(random: Random): Promise<() => Promise<void> | void>;
}

const ITEMS = itemsOf(sample[0]!);

const letters = await Promise.all(
  sample.map(async (deck) => {
    const { body, version } = bodyOf('lesson', await deckLink(deck, ''), 9);
    return { version, text: inflateRawSync(body).toString('utf8') };
  }),
);
const documents = sample.map((deck) => JSON.stringify(writeDeck(deck)));
const report = bodyOf('report', reportLink(REPORT, ''), 9);
const midi = writeMidi({ tempo: 90, notes: phraseDeck().phrases[0]!.notes }, 'one');
const backup = writeBackup(
  {
    reviews: fc.sample(anyReview, { numRuns: 20, seed: 3 }),
    decks: [],
    drafts: [],
    reports: [],
    minutes: [],
    timings: [],
    quarantined: [],
  },
  1_700_000_000_000,
);
const TABLATURE =
  'e|-------3-6-3-|\nB|-----4-------|\nG|---5---------|\nD|-5h7---------|\nA|-------------|\nE|-------------|\n';

const DECODERS: Record<string, Decoder> = {
  'lesson link': {
    share: 12,
    async make(random) {
      const { version, text } = random.pick(letters);
      const body = deflateRawSync(mutatedText(text, random.pick(letters).text, random));
      const link = sealLink('lesson', '', version, body);
      const bare = random.below(10) === 0 ? mutatedText(link, link, random) : link;
      return async () => {
        const read = await readLink(bare);
        if ('deck' in read) show(read.deck, random);
      };
    },
  },
  'lesson document': {
    share: 20,
    async make(random) {
      const text = mutatedText(random.pick(documents), random.pick(documents), random);
      return () => {
        const read = readDeck(parsed(text));
        if ('deck' in read) show(read.deck, random);
      };
    },
  },
  'report link': {
    share: 23,
    async make(random) {
      const link = sealLink('report', '', report.version, mutatedBytes(report.body, random));
      return () => {
        const read = readReport(link);
        if ('fault' in read) return;
        const items = ITEMS.slice(0, read.report.items.length);
        if (fits(read.report, items)) pictureOf(read.report, items);
        expect(readReport(reportLink(read.report, ''))).toHaveProperty('report');
      };
    },
  },
  'MIDI file': {
    share: 15,
    async make(random) {
      const file = mutatedBytes(midi, random);
      return () => void readMidi(file, { key });
    },
  },
  tablature: {
    share: 15,
    async make(random) {
      const text = mutatedText(TABLATURE, TABLATURE, random);
      return () =>
        void readTablature(text, {
          instrument: GUITAR,
          key,
          length: beats(1, 3),
          tempo: 72,
          beatsPerBar: 4,
        });
    },
  },
  backup: {
    share: 15,
    async make(random) {
      const text = mutatedText(backup, backup, random);
      const any = {
        decks: () => true,
        drafts: () => true,
        reports: () => true,
        minutes: () => true,
        timings: () => true,
      };
      return async () => {
        await readBackup(text, any).catch((error: unknown) => {
          if (!(error instanceof BackupFault)) throw error;
        });
      };
    },
  },
};

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

/** ms of processor that work takes; where that is much, the least of some tries, for others use the machine too. */
async function taken(work: () => Promise<void> | void): Promise<number> {
  let least = Infinity;
  for (let tries = 0; tries < 5 && least > SLOW; tries++) {
    const start = process.cpuUsage();
    await work();
    const { user, system } = process.cpuUsage(start);
    least = Math.min(least, (user + system) / 1000);
  }
  return least;
}

describe('whatever comes in', () => {
  it.each(Object.entries(DECODERS))(
    'as a %s is refused with a sentence or can be shown, and soon',
    { timeout: SOAK ? 3_600_000 : 240_000 },
    async (_, { share, make }) => {
      const seed = SOAK ? Date.now() % 2 ** 31 : 11;
      const random = seeded(seed);
      for (let n = 0; n < (COUNT * share) / 100; n++) {
        const work = await make(random);
        try {
          expect(await taken(work)).toBeLessThanOrEqual(SLOW);
        } catch (error) {
          throw new Error(`seed ${seed}, number ${n}`, { cause: error });
        }
      }
    },
  );
});
