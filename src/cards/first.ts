/** The kinds of card that come with the page: one for the eye, and of two more as much as a plain lesson is counted and told of by. */
export { rules as place } from './place/rules.ts';
export { spot } from './spot/index.ts';
export { rules as trace } from './trace/rules.ts';
