import { microphoneState } from '../../listening/index.ts';
import { microphoneSentence } from '../../listening/sentences.ts';
import { putDown } from './inHand.ts';
import { WaysOn } from './WaysOn.tsx';
import './Guitar.css';

/** In a round with the guitar, where the phone hears it no more: why, and the ways on. */
export default function GuitarGone({ goOn }: { goOn(): void }) {
  const without = () => {
    putDown();
    goOn();
  };
  return (
    <div class="notice guitar-gone">
      <p role="status">
        {microphoneSentence.value ?? 'The microphone is off. Cards to be played wait.'}
      </p>
      <div class="buttons">
        <WaysOn without={without} isAsking={microphoneState.value === 'asking'} />
      </div>
    </div>
  );
}
