import { useMemo } from 'preact/hooks';
import { isLeftHanded } from '../../parts/handedness.ts';
import { movedAcross, movedAlong, nextShape } from './shape.ts';
import type { View } from './view.ts';

interface ShapeMovesProps {
  view: View;
  change(view: View): void;
  lies: boolean;
}

/** Six ways on from one shape. Arrows point where it goes on the neck that is seen. */
export function ShapeMoves({ view, change, lies }: ShapeMovesProps) {
  const leftHanded = isLeftHanded(view.instrument);
  const right = leftHanded ? '←' : '→';
  const left = leftHanded ? '→' : '←';
  const [up, down] = lies ? [right, left] : ['↓', '↑'];
  const [high, low] = lies ? ['↑', '↓'] : [right, left];
  const ways = useMemo(
    () => [
      { arrow: down, word: 'shape', label: 'next shape down', to: nextShape(view, -1) },
      { arrow: up, word: 'shape', label: 'next shape up', to: nextShape(view, 1) },
      { arrow: down, word: 'along', label: 'same shape down the neck', to: movedAlong(view, -1) },
      { arrow: up, word: 'along', label: 'same shape up the neck', to: movedAlong(view, 1) },
      {
        arrow: low,
        word: 'across',
        label: 'same shape on lower strings',
        to: movedAcross(view, -1),
      },
      {
        arrow: high,
        word: 'across',
        label: 'same shape on higher strings',
        to: movedAcross(view, 1),
      },
    ],
    [view, up, high],
  );
  // In each pair the arrow that points up or to the left comes first.
  const pairs = [ways.slice(0, 2), ways.slice(2, 4), ways.slice(4)].map((pair) =>
    pair.toSorted((a, b) => '↑←↓→'.indexOf(a.arrow) - '↑←↓→'.indexOf(b.arrow)),
  );
  return (
    <div class="shape-moves" role="group" aria-label="From this shape">
      {pairs.flat().map(({ arrow, word, label, to }) => (
        <button
          key={label}
          type="button"
          class="button"
          aria-label={`${word}: ${label}`}
          // Not `disabled`: the focus stays where the last step was.
          aria-disabled={to === null}
          onClick={() => to && change(to)}
        >
          <span class="arrow" aria-hidden="true">
            {arrow}
          </span>
          {word}
        </button>
      ))}
    </div>
  );
}
