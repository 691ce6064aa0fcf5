/**
 * The kinds of tone that belong to no chord but lead from one chord tone to another (*Open Music Theory* v1,
 * "Embellishing tones").
 */
export const EMBELLISHMENTS = [
  'passing',
  'neighbour',
  'double neighbour',
  'appoggiatura',
  'escape',
  'anticipation',
  'suspension',
] as const;
export type Embellishment = (typeof EMBELLISHMENTS)[number];
