/** What to do where a part of the page did not come: `what` says which, without a full stop. */
export function lostSentence(what: string): string {
  const todo = navigator.onLine
    ? 'It may have changed since this window was opened: load the page again'
    : 'Go online, then load the page again';
  return `${what}. ${todo}; nothing that you did is lost.`;
}
