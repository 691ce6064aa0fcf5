import { microphoneSentence, microphoneState } from '../../listening/index.ts';
import './Guitar.css';

/** That the microphone is on. */
export function ListeningMark() {
  return microphoneState.value === 'listening' ? (
    <span class="listening" title={microphoneSentence.value}>
      Listening
    </span>
  ) : null;
}
