/** The screen of a first visit, drawn as the page is built: `page.ts` runs it and puts it into the page. */
import { renderToString } from 'preact-render-to-string';
import { Shell } from '../app/shell/Shell.tsx';

export const firstScreen = renderToString(<Shell />);
