export { explainPlaces as explain } from '../arpeggio/placing.ts';
