interface ToolProps {
  name: string;
  disabled?: boolean;
  use(): void;
}

/** A small button that changes what is written. */
export function Tool({ name, disabled, use }: ToolProps) {
  return (
    <button type="button" class="button small" disabled={disabled} onClick={use}>
      {name}
    </button>
  );
}
