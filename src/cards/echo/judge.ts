export { answers, judge } from '../playing/judge.ts';
