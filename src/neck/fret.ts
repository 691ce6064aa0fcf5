/** 2^(−1/12), written out so that every engine has the same digits. */
const SEMITONE = 0.943874312681693_5;

const ratios: number[] = [1];
while (ratios.length < 48) ratios.push(ratios.at(-1)! * SEMITONE);

/**
 * Distance from the nut to a fret, in the unit of `scaleLength` (mm): L·(1 − 2^(−n/12)) (M. Koch, *Building Electric
 * Guitars*). Frets 0 to 47.
 */
export function fretDistance(scaleLength: number, fret: number): number {
  return scaleLength * (1 - ratios[fret]!);
}
