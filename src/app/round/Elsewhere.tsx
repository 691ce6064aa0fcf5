/** Said in place of a card while another window asks the round. */
export function Elsewhere({ takeOver }: { takeOver(): void }) {
  return (
    <main class="screen">
      <h1>This round is open in another window</h1>
      <p>
        One window at a time goes on with a round. When that one has left it, the cards come here.
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
