/** The kinds of card that come with the page: two for the eye, and of a third as much as a plain lesson is counted and told of by. */
export { place } from './place/index.ts';
export { spot } from './spot/index.ts';
export { rules as trace } from './trace/rules.ts';
