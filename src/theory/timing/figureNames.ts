/** The figures that have a name of their own, and how they divide the beat. */
export const FIGURES = { quarters: 1, eighths: 2, triplets: 3 } as const;
export type FigureName = keyof typeof FIGURES;
