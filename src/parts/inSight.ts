/** Scrolls a frame, and nothing but it, so that what is inside lies in its sight. */
export function bringIntoSight(frame: HTMLElement, inside: Element): void {
  const [outer, inner] = [frame.getBoundingClientRect(), inside.getBoundingClientRect()];
  const by = (low: number, high: number, from: number, to: number) =>
    low - ROOM < from ? low - ROOM - from : Math.max(0, high + ROOM - to);
  frame.scrollLeft += by(inner.left, inner.right, outer.left, outer.right);
  frame.scrollTop += by(inner.top, inner.bottom, outer.top, outer.bottom);
}

/** What is left between the frame's edge and what was brought into sight, px: names of strings may stand there. */
const ROOM = 28;
