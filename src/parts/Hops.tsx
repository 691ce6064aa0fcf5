/** A path of degrees as hops over the staircase: higher is a higher pitch. `heights` in any one unit. */
export function Hops({ heights }: { heights: readonly number[] }) {
  const low = Math.min(...heights);
  const reach = Math.max(...heights) - low || 1;
  const points = heights.map((height, index) => ({
    x: 6 + index * (112 / Math.max(1, heights.length - 1)),
    y: 32 - ((height - low) / reach) * 18,
  }));
  const arcs = points.slice(1).map((to, index) => {
    const from = points[index]!;
    const top = Math.min(from.y, to.y) - 10;
    return `M${from.x} ${from.y}Q${(from.x + to.x) / 2} ${top} ${to.x} ${to.y}`;
  });
  return (
    <svg class="hops" viewBox="0 0 124 40" width="124" height="40" aria-hidden="true">
      <path d={arcs.join('')} fill="none" stroke="currentColor" stroke-width="1.5" />
      {points.map((point, index) => (
        <circle key={index} cx={point.x} cy={point.y} r="3.5" fill="currentColor" />
      ))}
    </svg>
  );
}
