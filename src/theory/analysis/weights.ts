/**
 * What the analysis of arpeggio phrases weighs. Costs: the cheapest reading wins. The weights belong
 * together and to such phrases; they do not carry over to tunes with chord symbols. They were chosen so that the true
 * reading of a phrase costs less than every other by a margin that grows with what the other has wrong
 * (I. Tsochantaridis, T. Joachims, T. Hofmann & Y. Altun, *Large margin methods for structured and interdependent output
 * variables*, Journal of Machine Learning Research 6, 2005), on written and random phrases (`tests/theory`) and on drawn ones
 * with long arpeggios. Then some were set back by hand towards what they were before long arpeggios were learned, until the
 * counts of `apart` were as good again, and a few were moved where the true readings of all written phrases became likelier.
 */

/** Of a chord tone: × ln(number of notes of the chord / 3). */
export const chordTone = 1.8;
/** × for each note of a ninth chord. */
export const ninthTone = 1.42;
/** × for one that is reached by a third from another, for an arpeggio goes by thirds: by how many its run has. */
export const third = { alone: 0.8, three: 0.3, four: 0 } as const;
/** A seventh or ninth with steps on both sides: its cost × the note's weight, and how far it counts as present. */
export const stepped = { cost: 1.2, present: 0.64 } as const;
/** Of an embellishing tone, × the note's weight. */
export const embellishment = {
  passing: 2.75,
  neighbour: 3.08,
  'double neighbour': 1,
  appoggiatura: 4.39,
  escape: 3.45,
  anticipation: 3.98,
  suspension: 1.73,
} as const;
export const foreign = 9.5;
/** What an appoggiatura adds: off the beat; for each beat that it outlasts half a beat; where it resolves upward. */
export const appoggiatura = { offBeat: 3.2, long: 0.8, upward: 0.95 } as const;
/** A note's weight by its length in beats: min(most, base + root · √length). */
export const weight = { base: 0.63, root: 1.17, most: 1.3 } as const;
export const size = { triad: -0.16, seventh: 0.45, ninth: -0.56, eleventh: 2.2 } as const;
/** Of a member that does not sound; root and third × (1 + `perNote` for each note of the chord beyond three). */
export const missing = { root: 3.04, third: 4.22, fifth: 1.5, beyond: 6, perNote: 0.54 } as const;
/** × what is missing of root, third and fifth in groups of one and two notes: a note alone is its chord's root. */
export const missingInShort = [
  [3, 0, 0],
  [0.85, 0.72, 0.69],
] as const;
/** The root sounds first; lowest; neither, for each note of the chord beyond three. */
export const root = { first: -1.15, lowest: -0.05, neither: 0.86 } as const;
/** Of each group, and more for groups of one, two and three notes: / their beats where they last longer than one. */
export const group = 0.2;
export const short = [0.5, 0.8, 0.4] as const;
/**
 * By how many thirds in a row a run has, four for all longer ones: of a border at its first or last third, and in its
 * middle; × for a point of a loose grid that lies in it and has no border. Of a third that goes on in another octave, in
 * any run of so many.
 */
export const run = {
  3: { edge: { cut: 1.82, inside: 0.24 }, middle: { cut: 0.71, inside: 0.61 } },
  4: { edge: { cut: 4.09, inside: 0.08 }, middle: { cut: 6.96, inside: 0 } },
  moved: { cut: 1, inside: 1 },
} as const;
/** The longest group in notes, but for a span that is ruled: a bar of sixteenths. */
export const longest = 16;
/** Where a group starts: on the grid; off it at a half bar, at a beat, elsewhere. A grid point inside a group. */
export const start = { onGrid: 0, halfBar: 3.4, beat: 6.2, elsewhere: 7 } as const;
export const inside = 4.2;
/** Of choosing a loose grid; a point of it inside a group; a group on it of more than two beats that are no whole bars. */
export const loose = { cost: 1.6, inside: 2.12, odd: 1.5 } as const;
/** Grids to choose from, each with its price. */
export const grid = {
  beat: 0.28,
  halfBar: -0.4,
  bar: 0.25,
  twoBars: 0.29,
  uneven: 1.8,
  mixed: 0.25,
  counted: 5,
} as const;
/** A group that lasts otherwise than the one before it. */
export const uneven = 0.66;
/** What a group gains whose figure is that of the group before it, on other steps of the scale. */
export const figure = 1.6;
/** Of a grid that is shifted by beats because the bar line is unknown. */
export const shifted = 2;
/** × −ln of a chord's frequency, and of its chance after the one before; the same chord again instead of the latter. */
export const frequency = 0.48;
export const succession = 0.45;
export const again = 12;
/** The first degree at the start and at the end. */
export const tonic = { start: -0.52, end: -0.6 } as const;
/** Of the softmax that turns costs into confidence. */
export const temperature = 1.6;
