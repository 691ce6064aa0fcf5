import type { Page } from '@playwright/test';

/** A page in an engine, whichever drives it: as much as the tests that pass in all of them need. */
export interface EnginePage {
  goto(address: string): Promise<unknown>;
  /** Taps the first element of a selector, once it is there. */
  tap(selector: string): Promise<void>;
  /** What a function gives that is run in the page, with one argument. */
  evaluate<A, T>(run: (argument: A) => T, argument: A): Promise<Awaited<T>>;
  /** Waits until an element is there. */
  waitFor(selector: string): Promise<void>;
  /** Makes the page this large, px. */
  resize(width: number, height: number): Promise<void>;
  close(): Promise<void>;
}

/** Chromium's, which Playwright drives. */
export function chromiumPage(page: Page): EnginePage {
  return {
    goto: (address) => page.goto(address),
    tap: (selector) => page.locator(selector).first().tap(),
    evaluate: (run, argument) =>
      page.evaluate(run as (given: unknown) => never, argument) as Promise<never>,
    waitFor: (selector) => page.locator(selector).first().waitFor({ state: 'attached' }),
    resize: (width, height) => page.setViewportSize({ width, height }),
    close: async () => {},
  };
}

/** Waits until something is so, 30 s at most. */
export async function until(isSo: () => Promise<boolean>): Promise<void> {
  for (const end = Date.now() + 30_000; !(await isSo());) {
    if (Date.now() > end) throw new Error(`Kept waiting for: ${isSo}`);
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}
