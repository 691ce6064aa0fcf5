import { readReport } from '../../decks/report.ts';
import { LinkForm } from '../TextForm.tsx';
import { go } from '../router.ts';

/** A report's link out of a message. */
export function PasteReport() {
  return <LinkForm label="A report’s link" open={openReport} />;
}

function openReport(link: string): string | null {
  const read = readReport(link);
  if ('fault' in read) return read.fault;
  go('report', read.payload);
  return null;
}
