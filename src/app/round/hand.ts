import type { VNode } from 'preact';
import type { Guitar } from '../../cards/kind.ts';

/** What a round has of the guitar in hand. */
export interface Hand {
  /** What stands in place of the cards until it is ready. */
  readonly gate: VNode | false;
  /** Said where it was ready, and the phone hears it no more. */
  readonly notice: VNode | false;
  /** That the microphone is on. */
  readonly mark: VNode | false;
  /** Whether a card is being drawn after the gate. */
  readonly isDrawing: boolean;
  /** What the card is lent. */
  readonly lent: Guitar | null;
  /** Whether the next card comes by itself. */
  readonly goesOn: boolean;
}

/** That of a round without it. */
export const EMPTY: Hand = {
  gate: false,
  notice: false,
  mark: false,
  isDrawing: false,
  lent: null,
  goesOn: false,
};
