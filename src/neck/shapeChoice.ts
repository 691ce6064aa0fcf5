import type { Member } from '../theory/chord.ts';

/** Which shapes of an arpeggio a teacher asks for: those with the root lowest, or those with another member. */
export const SHAPE_CHOICES = ['root position', 'inversions'] as const;
export type ShapeChoice = (typeof SHAPE_CHOICES)[number];

/** Whether a shape whose lowest note is this member is asked for; any is where no choice was made. */
export function takesLowest(choice: ShapeChoice | undefined, lowest: Member): boolean {
  return choice === undefined || (choice === 'root position') === (lowest === 1);
}
