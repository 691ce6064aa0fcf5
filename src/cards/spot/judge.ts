export { judgeNamed as judge } from '../named.ts';
