import './Facts.css';

interface FactsProps {
  /** What the table tells, for whoever does not see what it belongs to. */
  caption: string;
  head: readonly string[];
  /** Each with as many cells as the head; the first one names the row. */
  rows: readonly (readonly string[])[];
}

/** The facts of a picture as a table, folded away under it. */
export function Facts({ caption, head, rows }: FactsProps) {
  return (
    <details class="as-table">
      <summary>As a table</summary>
      {/* oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- what scrolls has to be in reach of the keys */}
      <div class="scrolls" tabIndex={0} role="region" aria-label={caption}>
        <table>
          <caption class="unseen">{caption}</caption>
          <thead>
            <tr>
              {head.map((cell, index) => (
                <th key={index} scope="col">
                  {cell}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(([name, ...cells]) => (
              <tr key={name}>
                <th scope="row">{name}</th>
                {cells.map((cell, index) => (
                  <td key={index}>{cell}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}
