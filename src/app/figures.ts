/** Figures in words. */

/** A share of 1 as `62 %`. */
export function percent(share: number): string {
  return `${Math.round(share * 100)} %`;
}

/** `1 drill`, `3 drills`. */
export function counted(count: number, one: string): string {
  return `${count} ${count === 1 ? one : `${one}s`}`;
}
