export { explainPlaced as explain } from '../arpeggio/placing.ts';
