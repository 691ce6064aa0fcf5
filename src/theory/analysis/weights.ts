/**
 * What the analysis of arpeggio phrases weighs, in one table. Costs: the cheapest reading wins. The weights belong
 * together and to such phrases; they do not carry over to tunes with chord symbols. They were chosen so that the true
 * reading of a phrase costs less than every other by a margin that grows with what the other has wrong
 * (I. Tsochantaridis, T. Joachims, T. Hofmann & Y. Altun, *Large margin methods for structured and interdependent output
 * variables*, Journal of Machine Learning Research 6, 2005), on written and random phrases (`tests/theory`);
 * that a note alone lacks its chord's root costs more by hand, which changed nothing there.
 */
export const ARPEGGIOS = {
  /** Of a chord tone: × ln(number of notes of the chord / 3). */
  chordTone: 0.86,
  /** × for each note of a ninth chord. */
  ninthTone: 1.26,
  /** A seventh or ninth with steps on both sides: its cost × the note's weight, and how far it counts as present. */
  stepped: { cost: 0.24, present: 0.43 },
  /** Of a step from one chord tone to another: an arpeggio leaps. */
  step: 0.25,
  /** Of an embellishing tone, × the note's weight. */
  embellishment: {
    passing: 1.98,
    neighbour: 2.28,
    'double neighbour': 0.73,
    appoggiatura: 3.25,
    escape: 2.65,
    anticipation: 2.95,
    suspension: 1.28,
  },
  foreign: 7.09,
  /** What an appoggiatura adds: off the beat; for each beat that it outlasts half a beat; where it resolves upward. */
  appoggiatura: { offBeat: 2.15, long: 0.5, upward: 0.61 },
  /** A note's weight by its length in beats: min(most, base + root · √length). */
  weight: { base: 0.63, root: 1.17, most: 1.3 },
  size: { triad: -0.13, seventh: 0.24, ninth: 0.42, eleventh: 5 },
  /** Of a member that does not sound; root and third × (1 + `perNote` for each note of the chord beyond three). */
  missing: { root: 2.45, third: 2.19, fifth: 2.3, beyond: 4.16, perNote: 0.54 },
  /** × what is missing of root, third and fifth in groups of one and two notes: a note alone is its chord's root. */
  missingInShort: [
    [3, 0.04, 0.03],
    [0.64, 0.52, 0.43],
  ],
  /** The root sounds first; lowest; neither, for each note of the chord beyond three. */
  root: { first: -1, lowest: -0.18, neither: 0.94 },
  /** Of each group, and more for groups of one, two and three notes: / their beats where they last longer than one. */
  group: 0.16,
  short: [0, 0.51, 0.39],
  /**
   * By how many thirds in a row a run has, four for all longer ones: of a border that cuts it; × for a grid point that
   * lies in it and has no border. Chosen by hand, on phrases with long arpeggios.
   */
  run: {
    3: { cut: 1.2, inside: 0.6 },
    4: { cut: 5, inside: 0.1 },
  },
  /** The longest group in notes, but for a span that is ruled: a bar of sixteenths. */
  longest: 16,
  /** Where a group starts: on the grid; off it at a half bar, at a beat, elsewhere. A grid point inside a group. */
  start: { onGrid: 0, halfBar: 2.49, beat: 4.6, elsewhere: 5.24 },
  inside: 3.64,
  /** Grids to choose from, each with its price. */
  grid: {
    beat: 0.27,
    halfBar: -0.12,
    bar: 0.07,
    twoBars: 0.26,
    uneven: 1.32,
    mixed: 0.32,
    counted: 2.65,
  },
  /** A group that lasts otherwise than the one before it. */
  uneven: 0.44,
  /** What a group gains whose figure is that of the group before it, on other steps of the scale. */
  figure: 1.71,
  /** Of a grid that is shifted by beats because the bar line is unknown. */
  shifted: 2,
  /** × −ln of a chord's frequency, and of its chance after the one before; the same chord again instead of the latter. */
  frequency: 0.45,
  succession: 0.29,
  again: 8,
  /** The first degree at the start and at the end. */
  tonic: { start: -0.52, end: -0.6 },
  /** Of the softmax that turns costs into confidence. */
  temperature: 1.6,
} as const;
