import { render } from 'preact';
import './parts/frame.css';
import { restore } from './app/round/session.ts';
import { keepOffline } from './app/shell/update.ts';
import { Shell } from './app/shell/Shell.tsx';
import { open } from './app/state.ts';
import { preload } from './sound/index.ts';

render(<Shell />, document.getElementById('app')!);
void open().then(restore);

// After the first screen: the worker that keeps the app for offline, and the strings.
addEventListener('load', () => {
  void keepOffline();
  void preload();
});
