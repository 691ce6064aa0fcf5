/** The scales a lesson can be in, by their English names. */
export type ScaleKind =
  | 'major'
  | 'minor'
  | 'harmonic minor'
  | 'melodic minor';
