import { signal } from '../signals/signal.ts';
import type { Instrument } from '../neck/instrument.ts';

/** Which hand every neck is drawn for, whatever the instrument says; null: the instrument's own. */
export const drawnFor = signal<'left' | 'right' | null>(null);

/** Whether an instrument's neck is drawn for a left-handed player. */
export function isLeftHanded({ leftHanded }: Pick<Instrument, 'leftHanded'>): boolean {
  return drawnFor.value === null ? leftHanded : drawnFor.value === 'left';
}
