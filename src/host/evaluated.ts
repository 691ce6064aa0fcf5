import { isDeepStrictEqual } from 'node:util';
import { runnerImport, type InlineConfig, type Plugin } from 'vite';

/** What modules are run with that run as the page is built. */
export const RUN = {
  configFile: false,
  logLevel: 'warn',
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  plugins: [
    {
      name: 'no styles',
      enforce: 'pre',
      resolveId: (id: string) => (id.endsWith('.css') ? '\0style' : null),
      load: (id: string) => (id === '\0style' ? '' : null),
    },
  ],
} satisfies InlineConfig;

/**
 * Runs modules as the page is built, so that it gets what they export and nothing of what they take to make it.
 *
 * @param files their paths, as they end; what they export has to be JSON
 */
export function evaluated(...files: readonly string[]): Plugin {
  return {
    name: 'evaluated',
    apply: 'build',
    async load(id) {
      if (!files.some((file) => id.endsWith(file))) return null;
      const { module, dependencies } = await runnerImport<Record<string, unknown>>(id, RUN);
      for (const file of dependencies) this.addWatchFile(file);
      return Object.entries(module)
        .map(([name, value]) => `export const ${name} = ${json(id, value)};`)
        .join('\n');
    },
  };
}

/** @throws Error where it would come back as something else */
function json(id: string, value: unknown): string {
  const text = JSON.stringify(value);
  if (!isDeepStrictEqual(JSON.parse(text), value))
    throw new Error(`${id} exports what is no JSON.`);
  return text;
}
