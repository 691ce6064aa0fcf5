// Takes the README's pictures from the built app: npm run build && npm run pictures
// With `-- --all` every screen instead, at six sizes, light and dark, into test-results/pictures; with `-- --targets` none, but
// whatever is tapped on each is measured. Words after it choose screens by name: npm run pictures -- --all today settings
import { spawnSync } from 'node:child_process';

const [wish, ...names] = process.argv.slice(2);
const project = { '--all': 'all', '--targets': 'targets' }[wish] ?? 'readme';
const chosen = names.length > 0 ? ['-g', names.join('|')] : [];
const config = ['--config', 'tests/pictures/playwright.config.ts'];
const { status } = spawnSync(
  'npx',
  ['playwright', 'test', ...config, '--project', project, ...chosen],
  { stdio: 'inherit' },
);
process.exit(status ?? 1);
