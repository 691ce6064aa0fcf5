import { takeUpdate, updateReady } from './update.ts';

/** A newer version is there: taken when the student says so. */
export function UpdateNotice() {
  if (!updateReady.value) return null;
  return (
    <p class="notice update" role="status">
      A newer version is ready.{' '}
      <button type="button" class="button small" onClick={takeUpdate}>
        Take it now
      </button>
    </p>
  );
}
