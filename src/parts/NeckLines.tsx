import { hasInlay, inlayAt, span, type Layout } from './neckLayout.ts';

/** Strings, frets, nut and inlays, drawn in units of one string by one fret and stretched to fit. */
export function Lines({ strings, frets, lying, mirrored, capo }: Layout & { capo: number }) {
  const [low, high] = frets;
  const open = low === 0;
  const length = high - low + 1;
  const nutAt = open ? 1 : 0;
  const point = (across: number, along: number): [number, number] => {
    if (lying) return [mirrored ? length - along : along, across];
    return [across, along];
  };
  const line = (
    from: [number, number],
    to: [number, number],
    name: string,
    key: string,
    width?: number,
  ) => (
    <line
      key={key}
      class={name}
      x1={from[0]}
      y1={from[1]}
      x2={to[0]}
      y2={to[1]}
      stroke-width={width}
    />
  );
  const last = strings - 1;
  const [width, height] = lying ? [length, last] : [last, length];
  return (
    <>
      <svg
        class="lines"
        viewBox={`0 0 ${width} ${height}`}
        preserveAspectRatio="none"
        aria-hidden="true"
      >
        {span(nutAt, length).map((along) =>
          line(point(0, along), point(last, along), 'fret-line', `f${along}`),
        )}
        {span(0, last).map((across) =>
          line(
            point(across, nutAt),
            point(across, length),
            'string-line',
            `s${across}`,
            1 + 0.3 * (lying || mirrored ? across : last - across),
          ),
        )}
        {low <= 1 &&
          line(point(0, nutAt), point(last, nutAt), capo > 0 ? 'nut capo' : 'nut', 'nut')}
      </svg>
      <Inlays {...{ strings, frets, lying, mirrored, capo }} />
    </>
  );
}

function Inlays({ capo, ...layout }: Layout & { capo: number }) {
  const [low, high] = layout.frets;
  return (
    <>
      {span(Math.max(low, 1), high)
        .filter((fret) => hasInlay(fret, capo))
        .map((fret) => (
          <span
            key={fret}
            aria-hidden="true"
            class={`inlay ${(fret + capo) % 12 === 0 ? 'double' : ''}`}
            style={inlayAt(layout, fret)}
          />
        ))}
    </>
  );
}
