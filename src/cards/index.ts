/** Every kind of card: whoever imports this has them all here. */
import { prepare } from './excerpt/piece.ts';
import { bring, type Kinds } from './here.ts';
import * as list from './kinds.ts';

export { itemsByStep, itemsOf, KINDS, wantsGuitar } from './here.ts';
export { itemOf } from './itemOf.ts';

const all: Kinds = list;
bring(all, prepare);
