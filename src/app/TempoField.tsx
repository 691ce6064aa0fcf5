import { FASTEST, SLOWEST } from '../sound/tempo.ts';
import './TempoField.css';

interface TempoFieldProps {
  /** Quarter notes a minute. */
  tempo: number;
  /** Told of another tempo, within what can be played. */
  set(tempo: number): void;
}

/** A tempo to be written. What is no number leaves it as it was. */
export function TempoField({ tempo, set }: TempoFieldProps) {
  return (
    <label class="tempo-field">
      <span>Quarter notes a minute</span>
      <input
        type="number"
        inputMode="numeric"
        min={SLOWEST}
        max={FASTEST}
        value={tempo}
        onChange={(event) => {
          const wanted = Math.round(Number(event.currentTarget.value)) || tempo;
          const within = Math.min(FASTEST, Math.max(SLOWEST, wanted));
          event.currentTarget.value = String(within);
          if (within !== tempo) set(within);
        }}
      />
    </label>
  );
}
