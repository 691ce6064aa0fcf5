/** The screen of a first visit, drawn as the page is built: `page.ts` runs it and puts it into the page. */
import { renderToString } from 'preact-render-to-string';
import { FirstVisit } from '../app/today/Today.tsx';
import { Shell } from '../app/shell/Shell.tsx';

await FirstVisit.fetched();

export const firstScreen = renderToString(<Shell />);
