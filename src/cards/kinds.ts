/** Every kind of card: a new one is a folder here, a line here and a line in `decks/kinds.ts`. */
export { echo } from './echo/index.ts';
export { fill } from './fill/index.ts';
export { follow } from './follow/index.ts';
export { order } from './order/index.ts';
export { outline } from './outline/index.ts';
export { place } from './place/index.ts';
export { play } from './play/index.ts';
export { pulse } from './pulse/index.ts';
export { spot } from './spot/index.ts';
export { trace } from './trace/index.ts';
export { vary } from './vary/index.ts';
