import type { Plugin } from 'vite';

/** What the build calls at every `import()` of a script that has styles. */
const HELPER = '\0vite/preload-helper.js';

/** Has `fetched.ts` do that: small, and it fetches script and styles at once, not the one after the other. */
export function fetching(): Plugin {
  return {
    name: 'fetching',
    apply: 'build',
    enforce: 'pre',
    load: (id) =>
      id === HELPER ? `export { fetched as __vitePreload } from '/host/fetched.ts';` : null,
  };
}
