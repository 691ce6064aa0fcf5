/** How long the way to the first card is, from a first visit and from a lesson's link, beside a bare page: npm run build && npm run first-card */
import { test, type Browser } from '@playwright/test';
import { plainLink, wayToFirstCard, type Slowness, type Way } from '../../browser/firstCard.ts';
import { serveBare } from './bare.ts';

const SLOW: Slowness = { rate: 400_000, latency: 400, processor: 6 };
const TIMES = 5;

test('the way to the first card', async ({ browser, baseURL }) => {
  const bare = await serveBare();
  const pages = {
    'a bare page': bare.address,
    'a first visit': baseURL!,
    'a lesson’s link': await plainLink(baseURL!),
  };
  for (const [slowness, slow] of [
    ['at 400 kbit/s, 400 ms, 6 times slower', SLOW],
    ['as this machine is', undefined],
  ] as const) {
    console.log(`\n${slowness}: medians of ${TIMES}`);
    const waits: number[] = [];
    for (const [name, address] of Object.entries(pages)) {
      const ways = await repeated(browser, address, slow);
      waits.push(median(ways.map(({ answerable }) => answerable!)));
      console.log(
        `${name}: ${told(ways)}; ${(waits.at(-1)! / waits[0]!).toFixed(2)} of a bare page`,
      );
    }
  }
  bare.close();
});

async function repeated(browser: Browser, address: string, slow?: Slowness): Promise<Way[]> {
  const ways: Way[] = [];
  for (let time = 0; time < TIMES; time++) {
    const context = await browser.newContext({ viewport: { width: 360, height: 640 } });
    ways.push(await wayToFirstCard(await context.newPage(), address, slow));
    await context.close();
  }
  return ways;
}

function told(ways: readonly Way[]): string {
  const of = (what: keyof Way) => median(ways.map((way) => way[what]!));
  const ms = (what: keyof Way) => `${of(what).toFixed(0)} ms`;
  return [
    `${(of('bytes') / 1000).toFixed(1)} kB`,
    `${of('requests')} requests`,
    `first paint ${ms('paint')}`,
    `tapped ${ms('start')}`,
    `a card ${ms('card')}`,
    `to be answered ${ms('answerable')}`,
    `longest task ${ms('longest')}`,
  ].join(', ');
}

const median = (values: readonly number[]) =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]!;
