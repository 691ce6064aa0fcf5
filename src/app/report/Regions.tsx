import type { KnownRegion } from '../../practice/picture.ts';
import { percent } from '../figures.ts';

/** Where things are known, and where they are slow or were never seen: a row for each string set and stretch of frets. */
export function Regions({ regions }: { regions: readonly KnownRegion[] }) {
  return (
    <section class="where">
      <h2>Where</h2>
      <table class="regions">
        <thead>
          <tr>
            <th scope="col">Strings, frets</th>
            <th scope="col">Known</th>
            <th scope="col">Asked</th>
            <th scope="col">Slow</th>
          </tr>
        </thead>
        <tbody>
          {regions.map((region) => (
            <Row
              key={`${region.strings} ${region.frets} ${region.inPhrases} ${region.inTime}`}
              region={region}
            />
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Row({ region }: { region: KnownRegion }) {
  const { strings, frets, inPhrases, inTime, recall, seen, of, slow } = region;
  const lying = `${strings}, ${frets}${inPhrases ? ', in phrases' : ''}`.replaceAll('-', '–');
  return (
    <tr>
      <th scope="row">{strings ? lying : inTime ? 'in time' : 'by ear'}</th>
      <td data-of="Known">
        <span class="filling" style={{ '--filled': String(recall) }} aria-hidden="true" />
        {seen === 0 ? 'not yet' : percent(recall)}
      </td>
      <td data-of="Asked">
        {seen} of {of}
      </td>
      <td data-of="Slow">{slow || '–'}</td>
    </tr>
  );
}
