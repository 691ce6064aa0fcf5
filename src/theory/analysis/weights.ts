/**
 * What the analysis of arpeggio phrases weighs, in one table. Costs: the cheapest reading wins. The weights belong
 * together and to such phrases; they do not carry over to tunes with chord symbols (see `tunes.ts`).
 */
export const ARPEGGIOS = {
  /** Of a chord tone: × ln(number of notes of the chord / 3). */
  chordTone: 0.96,
  /** × for each note of a ninth chord. */
  ninthTone: 1.13,
  /** A seventh or ninth with steps on both sides: its cost × the note's weight, and how far it counts as present. */
  stepped: { cost: 0.25, present: 0.36 },
  /** Of an embellishing tone, × the note's weight. */
  embellishment: {
    passing: 1.59,
    neighbour: 2.02,
    'double neighbour': 0.74,
    appoggiatura: 3.41,
    escape: 2.61,
    anticipation: 2.96,
    suspension: 1.2,
  },
  foreign: 6.67,
  /** × on a beat, for all but appoggiatura and suspension. */
  onBeat: 1.18,
  /** What an appoggiatura adds: off the beat; for each beat that it outlasts half a beat; where it resolves upward. */
  appoggiatura: { offBeat: 2.08, long: 0.5, upward: 0.55 },
  /** A note's weight by its length in beats: min(most, base + root · √length). */
  weight: { base: 0.72, root: 0.83, most: 1.6 },
  size: { triad: -0.1, seventh: 0.24, ninth: 0.45 },
  /** Of a member that does not sound; root and third × (1 + `perNote` for each note of the chord beyond three). */
  missing: { root: 2.59, third: 2.01, fifth: 2.16, beyond: 3.99, perNote: 0.6 },
  /** × what is missing of root, third and fifth in groups of one and two notes: a note alone is its chord's root. */
  missingInShort: [
    [1.36, 0.22, 0.21],
    [0.49, 0.52, 0.5],
  ],
  /** The root sounds first; lowest; neither, for each note of the chord beyond three. */
  root: { first: -0.85, lowest: -0.22, neither: 0.92 },
  /** Of each group, and more for groups of one, two and three notes: / their beats where they last longer than one. */
  group: 0.21,
  short: [0.97, 0.52, 0.36],
  /** The longest group in notes, but for a span that is ruled: a bar of sixteenths. */
  longest: 16,
  /** Where a group starts: on the grid; off it at a half bar, at a beat, elsewhere. A grid point inside a group. */
  start: { onGrid: 0.07, halfBar: 1.82, beat: 3.71, elsewhere: 4.88 },
  inside: 2.93,
  /** Grids to choose from, each with its price. */
  grid: {
    beat: 0.29,
    halfBar: -0.1,
    bar: 0.05,
    twoBars: 0.24,
    uneven: 1.03,
    mixed: 0.69,
    counted: 2.71,
  },
  /** A group that lasts otherwise than the one before it: within the phrase; at its end. */
  uneven: { within: 0.65, last: 0.29 },
  /** What a group gains whose figure is that of the group before it, on other steps of the scale. */
  figure: 1.72,
  /** Of a grid that is shifted by beats because the bar line is unknown. */
  shifted: 2,
  /** × −ln of a chord's frequency, and of its chance after the one before; the same chord again instead of the latter. */
  frequency: 0.44,
  succession: 0.29,
  again: 8,
  /** The first degree at the start and at the end. */
  tonic: { start: -0.46, end: -0.47 },
  /** Of the softmax that turns costs into confidence. */
  temperature: 1.5,
} as const;
