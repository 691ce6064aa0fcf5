import { microphoneState } from '../../listening/index.ts';
import { LISTENING } from '../../listening/microphone-state.ts';
import './ListeningMark.css';

/** That the microphone is on. */
export function ListeningMark() {
  return microphoneState.value === 'listening' ? (
    <span class="listening" title={LISTENING}>
      Listening
    </span>
  ) : null;
}
