/**
 * What the analysis of arpeggio phrases weighs, in one table. Costs: the cheapest reading wins. The weights belong
 * together and to such phrases; they do not carry over to tunes with chord symbols (see `tunes.ts`).
 */
export const ARPEGGIOS = {
  /** Of a chord tone: × ln(number of notes of the chord / 3). */
  chordTone: 0.78,
  /** × for each note of a ninth chord. */
  ninthTone: 0.85,
  /** A seventh or ninth with steps on both sides: its cost × the note's weight, and how far it counts as present. */
  stepped: { cost: 0.23, present: 0.47 },
  /** Of an embellishing tone, × the note's weight. */
  embellishment: {
    passing: 1.4,
    neighbour: 1.4,
    'double neighbour': 0.8,
    appoggiatura: 3.18,
    escape: 2.78,
    anticipation: 1.96,
    suspension: 1.18,
  },
  foreign: 4.5,
  /** × on a beat, for all but appoggiatura and suspension. */
  onBeat: 1.75,
  /** What an appoggiatura adds: off the beat; for each beat that it outlasts half a beat; where it resolves upward. */
  appoggiatura: { offBeat: 1.6, long: 0.5, upward: 0.5 },
  /** A note's weight by its length in beats: min(most, base + root · √length). */
  weight: { base: 0.7, root: 0.76, most: 1.6 },
  size: { triad: -0.1, seventh: 0.2, ninth: 0.7 },
  /** Of a member that does not sound; root and third × (1 + `perNote` for each note of the chord beyond three). */
  missing: { root: 2.58, third: 1.1, fifth: 0.65, beyond: 3, perNote: 0.5 },
  /** × what is missing of root, third and fifth in groups of one and two notes. */
  missingInShort: [0.18, 0.5],
  /** The root sounds first; lowest; neither, for each note of the chord beyond three. */
  root: { first: -0.49, lowest: -0.25, neither: 0.4 },
  /** Of each group, and more for groups of one, two and three notes: / their beats where they last longer than one. */
  group: 0.21,
  short: [1.25, 0.71, 0.21],
  /** The longest group in notes, but for a span that is ruled: a bar of sixteenths. */
  longest: 16,
  /** Where a group starts: on the grid; off it at a half bar, at a beat, elsewhere. A grid point inside a group. */
  start: { onGrid: 0.14, halfBar: 1.2, beat: 2.77, elsewhere: 3.2 },
  inside: 2.38,
  /** Grids to choose from, each with its price. */
  grid: { beat: 0.3, halfBar: 0, bar: 0, twoBars: 0.2, uneven: 1 },
  /** Of a grid that is shifted by beats because the bar line is unknown. */
  shifted: 2,
  /** × −ln of a chord's frequency, and of its chance after the one before; the same chord again instead of the latter. */
  frequency: 0.12,
  succession: 0.25,
  again: 2.5,
  /** The first degree at the start and at the end. */
  tonic: { start: -0.3, end: -0.4 },
  /** Of the softmax that turns costs into confidence. */
  temperature: 0.8,
} as const;
