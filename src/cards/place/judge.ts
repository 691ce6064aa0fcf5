export { judgePlaces as judge } from '../arpeggio/placing.ts';

/** Its places are tapped: none is offered. */
export const answers = () => null;
