import { readReport } from '../../decks/report.ts';
import { PasteForm } from '../PasteForm.tsx';
import { go } from '../router.ts';

/** A report's link out of a message. */
export function PasteReport() {
  return <PasteForm label="A report’s link" open={openReport} />;
}

function openReport(link: string): string | null {
  const read = readReport(link);
  if ('fault' in read) return read.fault;
  go('report', read.payload);
  return null;
}
