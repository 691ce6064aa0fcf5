/** Scrolls a frame, and nothing but it, so that what is inside lies in its sight. */
export function bringIntoSight(frame: HTMLElement, inside: HTMLElement): void {
  const [outer, inner] = [frame.getBoundingClientRect(), inside.getBoundingClientRect()];
  const by = (low: number, high: number, from: number, to: number) =>
    low < from ? low - from - ROOM : high > to ? high - to + ROOM : 0;
  frame.scrollLeft += by(inner.left, inner.right, outer.left, outer.right);
  frame.scrollTop += by(inner.top, inner.bottom, outer.top, outer.bottom);
}

/** What is left between the frame's edge and what was brought into sight, px. */
const ROOM = 8;
