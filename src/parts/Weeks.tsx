import './Weeks.css';

interface WeeksProps {
  /** Moments, ms, in their order, and how high the line is at each, 0 to 1; two or more. */
  points: readonly { readonly at: number; readonly share: number }[];
  /** What a screen reader calls it. */
  label: string;
  /** What stands under the first and the last of them. */
  ends: readonly [string, string];
  /** What stands at the top, in the middle and at the bottom; a share of 1 where not given. */
  scale?: readonly [string, string, string];
}

const SHARE = ['100 %', '50', '0'] as const;

/** A figure over time, as a line: a share, from 0 to 100 %, unless another scale is given. */
export function Weeks({ points, label, ends, scale = SHARE }: WeeksProps) {
  const [first, last] = [points[0]!, points.at(-1)!];
  const x = (at: number) => (100 * (at - first.at)) / (last.at - first.at || 1);
  const line = points.map(
    ({ at, share }) => `${x(at).toFixed(2)} ${(100 - 100 * share).toFixed(2)}`,
  );
  return (
    <figure class="weeks" role="img" aria-label={label}>
      <span class="scale" style={{ '--share': '1' }}>
        {scale[0]}
      </span>
      <span class="scale" style={{ '--share': '0.5' }}>
        {scale[1]}
      </span>
      <span class="scale" style={{ '--share': '0' }}>
        {scale[2]}
      </span>
      <div class="plot">
        <svg viewBox="0 0 100 100" preserveAspectRatio="none" aria-hidden="true">
          <path class="rule" d="M0 0H100M0 50H100M0 100H100" />
          <path class="line" d={`M${line.join('L')}`} />
        </svg>
        <span class="now" style={{ '--share': String(last.share) }} />
      </div>
      <div class="ends">
        <span>{ends[0]}</span>
        <span>{ends[1]}</span>
      </div>
    </figure>
  );
}
