interface PutBackProps {
  /** What was taken out, `Drill 2`. */
  what: string;
  putBack(): void;
}

/** Says what is out of the lesson, and takes it in again. */
export function PutBack({ what, putBack }: PutBackProps) {
  return (
    <p class="notice">
      {what} is out.{' '}
      <button type="button" class="button quiet" onClick={putBack}>
        Put it back
      </button>
    </p>
  );
}
