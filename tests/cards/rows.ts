/** The rows of a table that is written a line each, its cells parted by ` | `. */
export function rows(table: string): string[][] {
  return table
    .trim()
    .split('\n')
    .map((line) => line.split('|').map((cell) => cell.trim()));
}
