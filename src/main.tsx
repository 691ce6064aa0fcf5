import { hydrate, render } from 'preact';
import { lostSentence } from './app/lost.ts';
import { later, pageLoaded, pause } from './app/later.ts';
import { begun } from './app/shell/open.ts';
import { Shell } from './app/shell/Shell.tsx';
import { FirstVisit } from './app/today/Today.tsx';
import { haveLog } from './app/state.ts';
import { trouble } from './app/trouble.ts';
import { fetchAfter, preload } from './sound/index.ts';
import { tellComponents } from './signals/components.ts';
import './parts/frame.css';

tellComponents();
fetchAfter(later);

const app = document.getElementById('app')!;
const { dataset } = document.documentElement;

// The page comes with a first visit's screen; see index.html.
if ('begun' in dataset) app.replaceChildren();
if (app.hasChildNodes()) void FirstVisit.fetched().then(goOnFromPage, anew);
else void pause().then(anew);

async function goOnFromPage() {
  hydrate(<Shell />, app);
  begin();
  await pause();
  const tapped = app.querySelector<HTMLElement>('[data-tapped]');
  tapped?.removeAttribute('data-tapped');
  tapped?.click();
}

function anew() {
  app.replaceChildren();
  render(<Shell />, app);
  begin();
}

function begin() {
  delete dataset.begun;
  delete app.dataset.early;
}

begun.catch((error: unknown) => {
  trouble.value = lostSentence('Skipwise could not begin');
  throw error;
});

addEventListener('load', pageLoaded);

// What keeps answers, the worker that keeps the app for offline, and the strings.
void later.then(() => {
  // A screen that goes dark is no worse than before where it cannot be fetched.
  import('./app/shell/afterwards.ts').catch(() => {});
  haveLog().catch(() => {
    // Not there now: it is asked for again with the first answer.
  });
  keepOffline().catch(() => {
    // Refused, as in a private window: everything works, but only online.
  });
  return preload();
});

async function keepOffline() {
  if (!('serviceWorker' in navigator) || !import.meta.env.PROD) return;
  await (await import('./app/keepOffline.ts')).keepOffline();
}
