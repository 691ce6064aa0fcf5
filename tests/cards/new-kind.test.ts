/** Adds a kind as DEVELOPERS.md says, in a copy of the source: what it costs, that it works, and that no part can be forgotten. */
import { execFile } from 'node:child_process';
import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, describe, expect, it } from 'vitest';
import type * as Draft from '../../src/making/draft.ts';
import type * as Document from '../../src/making/draftDocument.ts';
import type * as DeckWords from '../../src/app/deckWords.ts';
import type * as Cards from '../../src/cards/index.ts';
import type * as OnNeck from '../../src/cards/onNeck.ts';
import type { Deck, DrillOf } from '../../src/decks/deck.ts';
import type * as DeckDocument from '../../src/decks/document.ts';
import type * as Kinds from '../../src/decks/kinds.ts';
import type * as DeckLink from '../../src/decks/deckLink.ts';
import type * as Link from '../../src/decks/link.ts';
import { KIND_NAMES, letterOf } from '../../src/decks/kinds.ts';
import { DOCUMENT_VERSION } from '../../src/decks/version.ts';
import { GUITAR } from '../../src/neck/instrument.ts';

/** Its folder: does an arpeggio sound major, yes or no? */
const FOLDER = {
  'items.ts': `
    import type { Deck, DrillOf } from '../../decks/deck.ts';
    import type { IdHead } from '../../decks/id.ts';
    import { arpeggioItems, readArpeggioItem, type ArpeggioItem } from '../arpeggio/arpeggio.ts';
    export { arpeggioPlaces as places } from '../arpeggio/arpeggio.ts';
    export type BrightItem = ArpeggioItem<'bright'>;
    export const items = (deck: Deck, drill: DrillOf<'bright'>) => arpeggioItems('bright', deck, drill);
    export const read = (head: IdHead<'bright'>, rest: readonly string[]) => readArpeggioItem(head, rest);`,
  'ask.ts': `
    import type { Card } from '../kind.ts';
    import type { BrightItem } from './items.ts';
    export function ask(item: BrightItem, seed: number): Card<BrightItem> {
      return { item, seed, key: item.key, instrument: item.instrument };
    }`,
  'judge.ts': `
    import type { Card } from '../kind.ts';
    import type { BrightItem } from './items.ts';
    export const answers = () => ['yes', 'no'];
    export function judge({ item }: Card<BrightItem>, answer: string) {
      const right = (answer === 'yes') === [1, 4, 5].includes(item.degree);
      return { right, takenFor: right ? null : answer };
    }`,
  'explain.ts': `
    import { arpeggioSound } from '../frame/sounds.ts';
    export const explain = () => ({
      title: 'Bright', sentence: 'It is.', detail: '', dots: [], sound: arpeggioSound([60]), otherSound: null,
    });`,
  'words.ts': `
    import { drillWords, itemPlaceWords, itemWords } from '../arpeggio/words.ts';
    import type { KindWords } from '../kind.ts';
    import type { BrightItem } from './items.ts';
    export const words: KindWords<BrightItem> = {
      drills: 'tell what is bright',
      card: 'tell what is bright',
      brief: 'tell',
      none: 'there is nothing to tell',
      soon: 'soon you are asked, and tap yes or no.',
      taken: null,
      drill: (drill) => \`tell the bright of \${drillWords(drill)}\`,
      item: itemWords,
      itemPlace: itemPlaceWords,
    };`,
  'Face.tsx': `
    import type { Card, FaceProps } from '../kind.ts';
    import type { BrightItem } from './items.ts';
    export const Face = ({ card }: FaceProps<Card<BrightItem>>) => <p>{card.item.id}</p>;`,
  'index.ts': `
    import type { Kind } from '../kind.ts';
    import { ask } from './ask.ts';
    import { explain } from './explain.ts';
    import { Face } from './Face.tsx';
    import { items, places, read, type BrightItem } from './items.ts';
    import { answers, judge } from './judge.ts';
    import { words } from './words.ts';
    export const bright: Kind<BrightItem> = {
      name: 'bright',
      sense: 'eye',
      needs: [],
      playable: false,
      words,
      items,
      read,
      places,
      ask,
      answers,
      judge,
      explain,
      Face,
    };`,
};

/** Its two lines: one in each list, with a letter that no other has. */
const LETTER = `letter: '${[...'bcdgh'].find((free) => !KIND_NAMES.map(letterOf).includes(free))}'`;
const SINCE = DOCUMENT_VERSION + 1;
const DECLARED = `  bright: { ${LETTER}, drill: 'neck', guess: 1 / 2, confuses: false, since: ${SINCE} },\n`;
const LISTED = "export { bright } from './bright/index.ts';\n";

const copies: string[] = [];
afterAll(() => copies.forEach((copy) => rmSync(copy, { recursive: true })));

/** A copy of the source with the folder in it and these two lines. */
function copyWith(declared: string, listed: string): string {
  const copy = mkdtempSync(join(tmpdir(), 'new-kind-'));
  copies.push(copy);
  cpSync('src', join(copy, 'src'), { recursive: true });
  symlinkSync(resolve('node_modules'), join(copy, 'node_modules'));
  const settings = JSON.parse(readFileSync('tsconfig.json', 'utf8')) as object;
  writeFileSync(
    join(copy, 'tsconfig.json'),
    JSON.stringify({ ...settings, include: ['src'], exclude: ['src/worker.ts', 'src/host'] }),
  );
  addFolder(copy, 'bright');
  insert(join(copy, 'src/decks/kinds.ts'), '} as const satisfies', declared);
  insert(join(copy, 'src/cards/kinds.ts'), 'export { fill }', listed);
  return copy;
}

/** The kind's folder, under a name. */
function addFolder(copy: string, kind: string): void {
  mkdirSync(join(copy, 'src/cards', kind));
  for (const [name, text] of Object.entries(FOLDER))
    writeFileSync(join(copy, 'src/cards', kind, name), text.replaceAll('bright', kind));
}

/** Puts a line before another one. */
function insert(file: string, before: string, line: string): void {
  const text = readFileSync(file, 'utf8');
  expect(text).toContain(before);
  writeFileSync(file, text.replace(before, line + before));
}

/** What the compiler says of a copy: each fault with the file it is in. */
async function faults(copy: string): Promise<string[]> {
  const said = await promisify(execFile)(resolve('node_modules/.bin/tsc'), ['--noEmit'], {
    cwd: copy,
  }).catch((failed: { stdout: string }) => failed);
  return said.stdout.split(/\n(?! )/).filter((fault) => fault !== '');
}

describe('a new kind of card', () => {
  const copy = copyWith(DECLARED, LISTED);
  const load = <T>(path: string) => import(join(copy, 'src', path)) as Promise<T>;

  it('costs its folder and two lines', async () => {
    expect(await faults(copy)).toEqual([]);
  });

  it('is then drilled, drawn on the neck, kept in drafts and links, spoken of and guessed at', async () => {
    const [cards, { onNeck }, { deckLink }, { readLink }, { writeDeck }, document, words, kinds] =
      await Promise.all([
        load<typeof Cards>('cards/index.ts'),
        load<typeof OnNeck>('cards/onNeck.ts'),
        load<typeof DeckLink>('decks/deckLink.ts'),
        load<typeof Link>('decks/link.ts'),
        load<typeof DeckDocument>('decks/document.ts'),
        load<typeof Document>('making/draftDocument.ts'),
        load<typeof DeckWords>('app/deckWords.ts'),
        load<typeof Kinds>('decks/kinds.ts'),
      ]);
    const kind = 'bright' as 'spot';
    const drill: DrillOf<'spot'> = {
      kind,
      degrees: [1, 2],
      sizes: ['triad'],
      strings: [[5, 4]],
      frets: [1, 7],
    };
    const deck: Deck = {
      title: 'Bright ones',
      note: '',
      lessonDay: null,
      instrument: GUITAR,
      key: { tonic: 'Bb', scale: 'major' },
      drills: [drill],
      phrases: [],
    };
    const [item] = cards.itemsOf(deck);
    expect(item!.id).toBe('bright:Bb major:1:triad:guitar:5-4:1-7');
    expect(item).toMatchObject(cards.itemOf(item!.id)!);
    const { ask, answers, judge } = cards.KINDS[kind];
    const card = ask(item!, 1);
    expect(answers(card)!.filter((answer) => judge(card, answer).right)).toEqual(['yes']);
    expect(onNeck([item!], GUITAR)[0]!.places).toContainEqual(
      expect.objectContaining({ string: 5, fret: 1 }),
    );
    const marked = { ...deck, marks: { [item!.id]: 5 as const } };
    expect(await readLink(await deckLink(marked, ''))).toEqual({ deck: marked });
    // A program that has not the kind knows the versions up to it: it has to be told that it is too old.
    const rooted = { ...deck, drills: [{ ...drill, shapes: 'root position' as const }] };
    expect([deck, rooted].map((one) => writeDeck(one).version)).toEqual([SINCE, SINCE]);
    const { PLAIN_DRAFT } = await load<typeof Draft>('making/draft.ts');
    const draft = { ...PLAIN_DRAFT, drills: [kind, { ...drill, degrees: [] }] };
    expect(document.readDraft(document.writeDraft(draft))).toEqual({ draft });
    expect(words.drillWords(drill)).toBe('tell the bright of triads on strings 5–4, frets 1 to 7');
    expect(words.itemPlace(item!)).toBe('I on strings 5–4, frets 1 to 7');
    expect(kinds.guessOf(kind)).toBe(1 / 2);
  });

  it('is refused by the compiler, which names what is missing, without any part or line', async () => {
    const parts = FOLDER['index.ts'].match(/^ {6}\w+(?=[:,])/gm)!.map((part) => part.trim());
    expect(parts).toHaveLength(13);
    const facts = DECLARED.match(/\w+: [^,{}]+(?=,| })/g)!;
    expect(facts).toHaveLength(5);
    const named = (fact: string) => fact.split(':')[0]!;
    const lines = facts.map((fact) =>
      DECLARED.replace(`${fact}, `, '')
        .replace(`, ${fact}`, '')
        .replace('bright', `no_${named(fact)}`),
    );
    const broken = copyWith([DECLARED, ...lines].join(''), '');
    for (const part of parts) {
      const without = FOLDER['index.ts'].replace(new RegExp(`^ {6}${part}[:,].*\n`, 'm'), '');
      writeFileSync(join(broken, 'src/cards/bright', `without-${part}.ts`), without);
    }
    addFolder(broken, 'undeclared');
    const found = await faults(broken);
    const says = (file: string, fault: string) =>
      found.some((each) => each.startsWith(`src/${file}`) && each.includes(fault));
    for (const part of parts)
      expect(says(`cards/bright/without-${part}.ts`, `'${part}' is missing`), part).toBe(true);
    for (const fact of facts.map(named))
      expect(says('decks/kinds.ts', `'${fact}' is missing`), fact).toBe(true);
    expect(says('cards/index.ts', 'bright'), 'the line of the list').toBe(true);
    expect(says('cards/undeclared/', '"undeclared"'), 'the line that declares it').toBe(true);
  });
});
