export { explainPlaced as explain } from '../placing.ts';
