import { render } from 'preact';
import { lostSentence } from './app/shell/lost.ts';
import { Shell } from './app/shell/Shell.tsx';
import { keepOffline } from './app/shell/update.ts';
import { trouble } from './app/trouble.ts';
import './parts/frame.css';

render(<Shell />, document.getElementById('app')!);

// Everything that practises: the log, the memory, the cards. It opens the store itself.
import('./app/shell/open.ts')
  .then(({ begun }) => begun)
  .catch((error: unknown) => {
    trouble.value = lostSentence('Skipwise could not begin');
    throw error;
  });

// After the first screen: the worker that keeps the app for offline, and the strings.
addEventListener('load', () => {
  keepOffline().catch(() => {
    // Refused, as in a private window: everything works, but only online.
  });
  void import('./sound/index.ts').then(({ preload }) => preload());
});
