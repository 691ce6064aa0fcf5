export { judgePlaced as judge } from '../placing.ts';
