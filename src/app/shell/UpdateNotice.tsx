import { takeUpdate, update } from '../update.ts';

/** A newer version is there: taken when the student says so. */
export function UpdateNotice() {
  if (update.value === null) return null;
  const waits = update.value === 'waits';
  return (
    <p class="notice update" role="status">
      {waits ? 'A newer version is ready.' : 'Another window has taken a newer version.'}{' '}
      <button type="button" class="button small" onClick={takeUpdate}>
        {waits ? 'Take it now' : 'Go on with it'}
      </button>
    </p>
  );
}
