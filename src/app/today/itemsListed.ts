import { listed } from '../../parts/english.ts';

/** `I and ii on strings 5–4`: what is said of two items behind their names is said once. */
export function itemsListed(items: readonly string[]): string {
  return listed(items).replace(/^(\S+)( .+) and (\S+)\2$/, '$1 and $3$2');
}
