/** What goes on beside all screens and can wait for the first card. */
import { hasOpened } from '../state.ts';
import { stayAwake } from './awake.ts';
import { tellKeptOffline } from './offline.ts';

stayAwake();
void hasOpened.then(tellKeptOffline);
