/** When the click is heard after the count-in: on every beat, on the first of each bar, or gone for every second bar. */
export const CLICKS = ['beat', 'bar', 'gone'] as const;
export type Clicks = (typeof CLICKS)[number];
