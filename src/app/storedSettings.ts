/** Settings as the device keeps them. They come with the schema library, and only where some were kept. */
import * as v from 'valibot';
import { NAMINGS } from '../theory/naming.ts';
import { HANDS, KEY_SOUNDS, USUAL, type Settings } from './settings.ts';

const within = (low: number, high: number) => v.pipe(v.number(), v.minValue(low), v.maxValue(high));

const { guitar, once } = USUAL;

const StoredGuitar = v.object({
  inHand: v.fallback(v.boolean(), guitar.inHand),
  told: v.fallback(v.boolean(), guitar.told),
  byItself: v.fallback(v.boolean(), guitar.byItself),
  spoken: v.fallback(v.boolean(), guitar.spoken),
  tuned: v.fallback(
    v.nullable(v.object({ at: v.number(), instrument: v.string(), offset: within(-50, 50) })),
    guitar.tuned,
  ),
  delay: v.fallback(v.nullable(within(0, 1)), guitar.delay),
});

const StoredOnce = v.object({
  offline: v.fallback(v.boolean(), once.offline),
  install: v.fallback(v.boolean(), once.install),
  rounds: v.fallback(v.pipe(within(0, 2), v.integer()), once.rounds),
});

/** What is missing or not understood is as usual, each by itself. */
const StoredSettings = v.object({
  naming: v.fallback(v.picklist(NAMINGS), USUAL.naming),
  chordNames: v.fallback(v.boolean(), USUAL.chordNames),
  numerals: v.fallback(v.boolean(), USUAL.numerals),
  reasons: v.fallback(v.boolean(), USUAL.reasons),
  volume: v.fallback(within(0, 1), USUAL.volume),
  muted: v.fallback(v.boolean(), USUAL.muted),
  keySound: v.fallback(v.picklist(KEY_SOUNDS), USUAL.keySound),
  reference: v.fallback(within(430, 450), USUAL.reference),
  theme: v.fallback(v.picklist(['auto', 'light', 'dark']), USUAL.theme),
  hand: v.fallback(v.picklist(HANDS), USUAL.hand),
  report: v.fallback(v.object({ name: v.fallback(v.string(), '') }), USUAL.report),
  guitar: v.fallback(StoredGuitar, guitar),
  once: v.fallback(StoredOnce, once),
});

/** Settings as they were stored. */
export function readSettings(stored: unknown): Settings {
  return v.parse(v.fallback(StoredSettings, USUAL), stored);
}
