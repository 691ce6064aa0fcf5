/** The way to the first card: what is fetched for it, and when what is there. */
import type { CDPSession, Page } from '@playwright/test';
import { readDeck } from '../../src/decks/document.ts';
import { deckLink } from '../../src/decks/deckLink.ts';

/** When what was there, ms after the address was asked for. */
interface Times {
  /** The first button of the way was there, and was tapped. */
  start?: number;
  /** A card was on the screen. */
  card?: number;
  /** One could be answered: what is new is shown before, and was gone on from at once. */
  answerable?: number;
}

/** What it took until the first card could be answered. */
export interface Way extends Times {
  readonly requests: number;
  /** Bytes on the wire, headers with them. */
  readonly bytes: number;
  /** First contentful paint, ms. */
  readonly paint: number;
  /** The longest task of the page's own thread, ms. */
  readonly longest: number;
}

/** A connection and a processor. */
export interface Slowness {
  /** Bits a second. */
  readonly rate: number;
  /** ms */
  readonly latency: number;
  /** How many times slower than this one. */
  readonly processor: number;
}

const NECK = { sizes: ['triad'], strings: ['5-4', '4-3'], frets: [1, 8] };
const SEEN = { kind: 'spot', ...NECK };

/** A plain lesson, as a teacher makes it with three taps. */
export function plainLink(base: string): Promise<string> {
  const heard = { kind: 'trace', sizes: ['triad'], contours: ['up', 'turn'], tempo: 72 };
  return linkOf([SEEN, { kind: 'place', ...NECK }, heard], base);
}

/** The cards of it that one tap answers. */
export const spotLink = (base: string): Promise<string> => linkOf([SEEN], base);

function linkOf(drills: readonly object[], base: string): Promise<string> {
  const read = readDeck({ version: 1, title: 'B♭ major', key: 'Bb major', drills });
  if ('fault' in read) throw new Error(read.fault);
  return deckLink(read.deck, base);
}

/** Goes it on a page that nothing was opened in before, each tap as soon as there is something to tap. */
export async function wayToFirstCard(page: Page, address: string, slow?: Slowness): Promise<Way> {
  const session = await page.context().newCDPSession(page);
  await session.send('Network.enable');
  if (slow) await slowDown(session, slow);
  const fetched = counting(session);
  await session.send('Runtime.enable');
  await session.send('Runtime.addBinding', { name: 'arrived' });
  const arrived = arrival(session);
  await page.addInitScript(tapOn);
  await page.goto(address, { waitUntil: 'commit' });
  const times = await arrived;
  const paint = await page.evaluate(
    () => performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? NaN,
  );
  const until = await page.evaluate((at) => performance.timeOrigin + at, times.answerable!);
  return { ...times, ...fetched(until), paint };
}

/** What the page tells once it has arrived: to look for it from outside would be work of the page's own on the way. */
function arrival(session: CDPSession): Promise<Window['way']> {
  return new Promise((resolve) => {
    session.on('Runtime.bindingCalled', ({ name, payload }) => {
      if (name === 'arrived') resolve(JSON.parse(payload) as Window['way']);
    });
  });
}

export async function slowDown(session: CDPSession, slow: Slowness): Promise<void> {
  const throughput = slow.rate / 8;
  await session.send('Network.emulateNetworkConditions', {
    offline: false,
    latency: slow.latency,
    downloadThroughput: throughput,
    uploadThroughput: throughput,
  });
  await session.send('Emulation.setCPUThrottlingRate', { rate: slow.processor });
}

/** With it begins what is fetched in a quiet moment, which a slow machine may come to before the first card. */
const QUIET = /\/keepOffline-/;

/**
 * Counts what is asked for up to a moment, ms, and what comes of it; what is in the page itself is neither, nor what is
 * asked for as soon as that moment has come, or in a quiet one before it.
 */
function counting(session: CDPSession): (until: number) => { requests: number; bytes: number } {
  const asked = new Map<string, { at: number; bytes: number }>();
  let isQuiet = false;
  session.on('Network.requestWillBeSent', ({ request, requestId, wallTime }) => {
    isQuiet ||= QUIET.test(request.url);
    if (isQuiet || /^(data|blob):/.test(request.url)) return;
    asked.set(requestId, { at: wallTime * 1000, bytes: 0 });
  });
  session.on('Network.loadingFinished', ({ requestId, encodedDataLength }) => {
    const one = asked.get(requestId);
    if (one) one.bytes = encodedDataLength;
  });
  return (until) => {
    const before = [...asked.values()].filter(({ at }) => at <= until);
    return { requests: before.length, bytes: before.reduce((sum, { bytes }) => sum + bytes, 0) };
  };
}

declare global {
  interface Window {
    way: Times & { longest: number };
    arrived(way: string): void;
  }
}

/** In the page: taps its way to the first card, and notes when what was there. */
function tapOn(): void {
  const way: Window['way'] = { longest: 0 };
  window.way = way;
  new PerformanceObserver((list) => {
    for (const { startTime, duration } of list.getEntries())
      if (startTime < (way.answerable ?? Infinity)) way.longest = Math.max(way.longest, duration);
  }).observe({ type: 'longtask', buffered: true });
  const arrive = () => {
    if (way.answerable) return;
    way.answerable = performance.now();
    // The task that drew it is told of once it is over.
    setTimeout(() => window.arrived(JSON.stringify(way)), 500);
  };
  const look = () => {
    const card = document.querySelector('[data-kind]');
    const next = document.querySelector<HTMLElement>('[data-kind][data-new] [data-do="next"]');
    const start = document.querySelector<HTMLButtonElement>('[data-do="start"]');
    if (card) way.card ??= performance.now();
    if (card && !card.matches('[data-new]')) arrive();
    else if (next) next.click();
    else if (start && !start.disabled && !way.start && start.checkVisibility()) {
      way.start = performance.now();
      start.click();
    }
  };
  new MutationObserver(look).observe(document, {
    childList: true,
    subtree: true,
    attributes: true,
  });
}
