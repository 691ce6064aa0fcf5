/** The player in an offline context, and what it is measured with. */
import { PitchDetector } from 'pitchy';
import { setContext } from 'tone/build/esm/core/context/GlobalContext.js';
import { OfflineContext } from 'tone/build/esm/core/context/OfflineContext.js';
import type { Plan } from '../../../src/sound/plan.ts';
import { LEAD, Player, type Controls, type Observer } from '../../../src/sound/player.ts';
import { RENDERED_NOTES, RENDERED_RATE, renderString } from '../../../src/sound/string.ts';

export { renderClick } from '../../../src/sound/click.ts';
export { keySounding } from '../../../src/sound/key.ts';
export { planOf } from '../../../src/sound/plan.ts';
export { frequency } from '../../../src/theory/note.ts';
export { LEAD };
export * as measure from '../../sound/measure.ts';

const notes = RENDERED_NOTES.map((midi) => ({
  midi,
  samples: renderString(midi, RENDERED_RATE),
}));

export const controls = (): Controls => ({ speed: 1, click: true, muted: false });
export const nobody: Observer = { note() {}, click() {}, end() {} };

/** Bytes that a player's rendered notes hold. */
export const bytes = notes.reduce((sum, { samples }) => sum + samples.byteLength, 0);

/** Plays a plan (or whatever else) in an offline context with the same player as ever. */
export async function render(
  seconds: number,
  rate: number,
  play: Plan | ((player: Player) => void),
): Promise<Float32Array> {
  const context = new OfflineContext(new OfflineAudioContext(1, Math.round(seconds * rate), rate));
  setContext(context);
  const player = new Player(context);
  for (const note of notes) player.add(note);
  if (typeof play === 'function') play(player);
  else player.play(play, controls(), nobody);
  return (await context.render(false)).getChannelData(0);
}

/** A plan at 60 beats a minute of nothing but these: beats are seconds. */
export const bare = (plucks: Plan['plucks'], dampings: Plan['dampings'] = []): Plan => ({
  plucks,
  dampings,
  clicks: [],
  start: 0,
  end: 600,
  loop: false,
  tempo: 60,
});

/** What McLeod's method (pitchy) hears in some samples, Hz. */
export function heard(samples: Float32Array, rate: number): number {
  return PitchDetector.forFloat32Array(samples.length).findPitch(samples, rate)[0];
}
