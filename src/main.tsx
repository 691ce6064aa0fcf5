import { render } from 'preact';
import './parts/frame.css';
import { keepOffline } from './app/shell/update.ts';
import { Shell } from './app/shell/Shell.tsx';

render(<Shell />, document.getElementById('app')!);

// Everything that practises: the log, the memory, the cards. It opens the store itself.
void import('./app/open.ts');

// After the first screen: the worker that keeps the app for offline, and the strings.
addEventListener('load', () => {
  void keepOffline();
  void import('./sound/index.ts').then(({ preload }) => preload());
});
