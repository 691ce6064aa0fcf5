/** Browsers may still read from its address a while after a download was asked for. */
const HOLD = 60_000;

/** Saves a file where the browser puts downloads. */
export function download(blob: Blob, name: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(blob);
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), HOLD);
}
