/**
 * What the left hand dislikes, in one unit of effort. The terms are those of hand travel, finger spread and a liking
 * for low positions (Heijink & Meulenbroek, *Journal of Motor Behavior* 34(4), 2002), minimised over a path as in
 * Sayegh, *Computer Music Journal* 13(3), 1989; the weights were fitted to printed fingerings, and to arpeggios in which
 * no player takes an open string in the middle of a position; other parts of both are held against them in
 * tests/outside. Lengths are mm. Lists by finger begin with the index.
 */

export const open = 0.407;
/** An open string beside a hand up the neck: by the way from the nut in 100 mm, and by its square. */
export const openUp = 1.867;
export const openAway = 1.954;
/** × where no finger is over a fret that sounds the same: then the open string spares the hand a way. */
export const openSparing = 0.05;
/** Each fret beyond the third of what is held just before or after an open string. */
export const openBeside = 0.114;
export const finger = [0.014, 0.147, 0.05, 0.268] as const;
export const up = 0.119;
export const beyondFirst = 0.05;
export const beyondTwelfth = 0.205;
export const string = [0.037, 0.011, 0.002, 0.041] as const;
export const rest = [0, 27, 56.808, 72] as const;
export const stretched = [0, 0.456, 0.66, 0.113] as const;
export const bunched = [0, 0.185, 0.118, 0.029] as const;
export const reachBack = 0.552;
export const barreHeld = 0.084;
export const barreLaid = 0.341;
export const barreShifted = 0.302;
/** To shift at all; a fret of 36 mm; what lies beyond `FAR`, in 100 mm, its square where the hand is eased or led. */
export const shiftOpen = [0.385, 0.093, 4.28] as const;
export const shiftGuided = [1.034, 0.096, 2] as const;
export const shift = [1.149, 0.166, 3] as const;
export const stringChange = 0.117;
export const stringCrossed = 0.027;
export const leapOnString = 0.9;
export const cutRinging = 0.108;
export const slide = 6.931;
export const indexRolled = 2.113;
export const fingerRolled = 5.413;
export const fingerJumped = 21.375;
/** By the lower finger × 5 + the higher. */
// prettier-ignore
export const pair = [
  0, 0, 0, 0, 0,
  0, 0, 0.009, 0.069, 0.032,
  0, 0, 0, 0.04, 0.117,
  0, 0, 0, 0, 0.154,
] as const;
export const strained = 1.766;
export const crossed = 0.942;
export const reversed = 0.361;
export const repeatedElsewhere = 0.021;
export const repeatedFinger = 0.095;
