/** A mean and its standard error. */
export interface Figure {
  readonly mean: number;
  readonly error: number;
}

export function meanAndError(values: readonly number[]): Figure {
  const mean = values.reduce((a, b) => a + b, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return { mean, error: Math.sqrt(squares / (values.length - 1) / values.length) };
}

export function figure({ mean, error }: Figure, places = 1): string {
  return `${mean.toFixed(places).padStart(5)} ± ${error.toFixed(places)}`;
}

export function signed(value: Figure, places = 1): string {
  return value.mean > 0 ? `+${figure(value, places).trim()}` : figure(value, places).trim();
}
