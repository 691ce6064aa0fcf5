/** As little as a page of this make can do: drawn beforehand, then brought to life; a tap shows a card. */
import { hydrate } from 'preact';
import { useState } from 'preact/hooks';

export function Bare() {
  const [isOn, setOn] = useState(false);
  return isOn ? (
    <main data-kind="bare">A card</main>
  ) : (
    <main>
      <h1>A page</h1>
      <button type="button" data-do="start" onClick={() => setOn(true)}>
        Begin
      </button>
    </main>
  );
}

const app = document.getElementById('app')!;
hydrate(<Bare />, app);
document.querySelector<HTMLElement>('[data-tapped]')?.click();
