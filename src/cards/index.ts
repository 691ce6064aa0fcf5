/** Every kind of card: whoever imports this has them all here. */
import { bring, type Kinds } from './here.ts';
import * as list from './kinds.ts';

export { itemOf, itemsOf, KINDS, wantsGuitar } from './here.ts';

const all: Kinds = list;
bring(all);
