/** Every kind of card: whoever imports this has them all here. */
import { bring, type Kinds } from './here.ts';
import * as list from './kinds.ts';

export { itemsOf, KINDS, wantsGuitar } from './here.ts';
export { itemOf } from './itemOf.ts';

const all: Kinds = list;
bring(all);
