import type { Place } from '../neck/place.ts';

/** How a neck is laid out on the screen. */
export interface Layout {
  strings: number;
  frets: readonly [number, number];
  lying: boolean;
  mirrored: boolean;
}

/** Where a place's cell is in the grid. Line 1 holds names of strings (upright) or numbers of frets (lying). */
export function cell(layout: Layout, place: Place): Record<string, string> {
  const { strings, frets, lying, mirrored } = layout;
  const along = place.fret - frets[0];
  const count = frets[1] - frets[0] + 1;
  if (lying) {
    const column = mirrored ? count - along : along + 2;
    return { gridColumn: String(column), gridRow: String(place.string) };
  }
  const across = mirrored && place.string <= strings ? place.string - 1 : strings - place.string;
  return { gridColumn: String(across + 2), gridRow: String(along + 2) };
}

/** A row is a string where the neck lies, and a fret where it stands. */
export function rowsOf({ strings, frets: [low, high], lying }: Layout): Place[][] {
  const all = span(1, strings);
  return lying
    ? all.map((string) => span(low, high).map((fret) => ({ string, fret })))
    : span(low, high).map((fret) => all.toReversed().map((string) => ({ string, fret })));
}

const INLAYS = [3, 5, 7, 9, 12, 15, 17, 19, 21, 24, 27];
/** Whether a fret has an inlay: they stay where they are when a capo shifts the counting of frets. */
export const hasInlay = (fret: number, capo: number) => INLAYS.includes(fret + capo);

/** An inlay lies in the middle of the neck across and of its fret along. */
export function inlayAt(layout: Layout, fret: number): Record<string, string> {
  const at = cell(layout, { string: 1, fret });
  return layout.lying
    ? { gridColumn: at.gridColumn!, gridRow: `1 / ${layout.strings + 1}` }
    : { gridRow: at.gridRow!, gridColumn: `2 / ${layout.strings + 2}` };
}

/** The place an arrow key leads to, or null for any other key. Moves stay on the neck that is drawn. */
export function neighbour(key: string, from: Place, layout: Layout): Place | null {
  const { strings, frets, lying, mirrored } = layout;
  const step = { ArrowUp: [0, -1], ArrowDown: [0, 1], ArrowLeft: [-1, 0], ArrowRight: [1, 0] }[key];
  if (!step) return null;
  const [x, y] = step as [number, number];
  const across = lying ? y : mirrored ? x : -x;
  const along = lying ? (mirrored ? -x : x) : y;
  return {
    string: Math.min(strings, Math.max(1, from.string + across)),
    fret: Math.min(frets[1], Math.max(frets[0], from.fret + along)),
  };
}

export function span(from: number, to: number): number[] {
  return Array.from({ length: Math.max(0, to - from + 1) }, (_, index) => from + index);
}
