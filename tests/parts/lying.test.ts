import { readdirSync, readFileSync } from 'node:fs';
import { afterEach, expect, it, vi } from 'vitest';
import { LYING, matching, WIDE } from '../../src/parts/lying.ts';

/** Whether a screen of such a size meets a query of the words that are used here. */
function meets(query: string, [width, height]: readonly [number, number]): boolean {
  return query.split(' and ').every((condition) => {
    const [, what, value] = /^\((orientation|(?:min|max)-(?:width|height)): (\w+)\)$/.exec(
      condition,
    )!;
    if (what === 'orientation') return value === (width > height ? 'landscape' : 'portrait');
    const [bound, side] = what!.split('-');
    const size = side === 'width' ? width : height;
    return bound === 'min'
      ? size >= Number.parseInt(value!, 10)
      : size <= Number.parseInt(value!, 10);
  });
}

it.each([
  ['a small phone that stands', [360, 640], false, false],
  ['a small phone that lies', [640, 360], true, false],
  ['a large phone that lies', [956, 440], true, false],
  ['a phone that folds out, standing', [584, 770], false, false],
  ['a tablet that lies', [1024, 768], false, true],
  ['a tablet that stands', [768, 1024], false, false],
  ['a notebook', [1366, 657], false, true],
  ['a low window on a desk', [1440, 560], true, false],
  ['one a row higher', [1440, 561], false, true],
  ['a narrow window on a desk', [1023, 900], false, false],
  ['a low window that is higher than wide', [500, 540], false, false],
] as [string, [number, number], boolean, boolean][])(
  'of %s it is said whether the neck lies, and whether there is room side by side',
  (_, screen, lies, isWide) => {
    expect([meets(LYING, screen), meets(WIDE, screen)]).toEqual([lies, isWide]);
  },
);

it('style sheets ask for a screen that lies, and for a wide one, in the same words', () => {
  const sheets = readdirSync('src', { recursive: true, encoding: 'utf8' }).filter((name) =>
    name.endsWith('.css'),
  );
  const asked = sheets.flatMap((name) =>
    [...readFileSync(`src/${name}`, 'utf8').matchAll(/@media ([^{]+)/g)].flatMap(([, query]) =>
      query!.split(',').map((one) => one.trim()),
    ),
  );
  const low = asked.filter((one) => one.startsWith('(orientation: landscape) and (max-height'));
  expect(new Set(low)).toEqual(new Set([LYING]));
  expect(new Set(asked.filter((one) => one.startsWith('(min-width: 1024px')))).toEqual(
    new Set([WIDE]),
  );
});

afterEach(() => vi.unstubAllGlobals());

it('follows a query as the screen turns', () => {
  let turn: ((event: { matches: boolean }) => void) | undefined;
  vi.stubGlobal('matchMedia', (query: string) => ({
    matches: query === 'a',
    addEventListener: (_: string, told: typeof turn) => (turn = told),
  }));
  const [yes, no] = [matching('a'), matching('b')];
  expect([yes.value, no.value]).toEqual([true, false]);
  turn!({ matches: true });
  expect(no.value).toBe(true);
});

it('is nothing where there is no screen', () => {
  vi.stubGlobal('matchMedia', undefined);
  expect(matching('a').value).toBe(false);
});
