import { signal } from '../signals/signal.ts';

const SCREENS = [
  'today',
  'known',
  'neck',
  'phrases',
  'minute',
  'round',
  'lesson',
  'lessons',
  'teach',
  'send',
  'report',
  'class',
  'settings',
  'calendar',
] as const;
export type Screen = (typeof SCREENS)[number];

/** Where the page is: the address after `#`. */
interface Route {
  readonly screen: Screen;
  /** What stands after the screen's name. */
  readonly rest: string;
}

function read(hash: string): Route {
  const [, name = '', rest = ''] = /^#\/?([^/]*)\/?(.*)$/.exec(hash) ?? [];
  const screen = SCREENS.find((known) => known === name) ?? 'today';
  return { screen, rest };
}

/** The screen shown now. */
export const route = signal<Route>(read(location.hash));

addEventListener('hashchange', () => {
  route.value = read(location.hash);
  scrollTo(0, 0);
});

/** Goes to a screen; the way back stays open. */
export function go(screen: Screen, rest = ''): void {
  location.hash = `#/${screen}${rest && `/${rest}`}`;
}

/** Goes back to the beginning of the screen that is shown: of an address that stays the browser tells nothing. */
export function beginAgain(): void {
  route.value = { ...route.value };
  scrollTo(0, 0);
}

/** For what takes a moment: goes on from this screen afterwards, unless the person has gone elsewhere meanwhile. */
export function leaving(): (to: Screen) => void {
  const [from, { hash }] = [route.value, location];
  return (to) => {
    // The address changes a moment before the page is told of it.
    if (route.value === from && location.hash === hash) go(to);
  };
}

/** The page's own address up to `#`: what links are made on. */
export function base(): string {
  return location.href.replace(/#.*$/, '');
}
