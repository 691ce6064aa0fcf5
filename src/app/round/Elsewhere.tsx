/** Said in place of a card while another window asks the round. */
export function Elsewhere({ takeOver }: { takeOver(): void }) {
  return (
    <main class="screen">
      <h1>This round is open in another window</h1>
      <p>
        Each card is asked once, so only one window goes on with a round. When that window is closed
        or has left its round, the cards come here by themselves.
      </p>
      <button type="button" class="button main" onClick={takeOver}>
        Go on here
      </button>
      <a class="button" href="#/today">
        Today
      </a>
    </main>
  );
}
