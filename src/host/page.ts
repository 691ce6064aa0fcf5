import { createHash } from 'node:crypto';
import { readFile, rm, writeFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import compression from 'compression';
import {
  build,
  runnerImport,
  type Connect,
  type Plugin,
  type ResolvedConfig,
  type Rolldown,
} from 'vite';
import { injectManifest } from 'workbox-build';
import { RUN } from './evaluated.ts';
import { notices } from './notices.ts';

/**
 * Finishes the built page: styles go into it, the content policy names their hash, and last of all,
 * when nothing changes any more, the service worker gets the list of files to keep.
 * Also serves the built page as production should: compressed and with the policy as a header.
 */
export function page(): Plugin {
  let config: ResolvedConfig;
  return {
    name: 'page',
    configResolved(resolved) {
      config = resolved;
    },
    writeBundle: {
      sequential: true,
      async handler(_options, bundle) {
        if (config.command !== 'build' || config.build.ssr) return;
        const out = resolve(config.root, config.build.outDir);
        const policy = await finishPage(
          out,
          scriptsOf(bundle, 'lesson'),
          scriptsOf(bundle, 'firstVisit'),
        );
        await writeFile(resolve(out, '_headers'), headersFile(policy));
        await writeFile(resolve(out, 'notices.txt'), await notices(resolve(config.root, '..')));
        await buildWorker(resolve(config.root, 'worker.ts'), out);
      },
    },
    configurePreviewServer(server) {
      const { port } = config.preview;
      server.httpServer.prependListener('error', (error: NodeJS.ErrnoException) => {
        if (error.code !== 'EADDRINUSE') return;
        console.error(
          `Port ${port} is taken. Stop what runs there, or choose another: PORT=${port + 1} npm start`,
        );
        process.exit(1);
      });
      const out = resolve(config.root, config.build.outDir);
      server.middlewares.use(compression() as Connect.NextHandleFunction);
      server.middlewares.use(async (_request, response, next) => {
        const html = await readFile(resolve(out, 'index.html'), 'utf8');
        for (const [name, value] of headers(policyOf(html))) response.setHeader(name, value);
        next();
      });
    },
  };
}

/**
 * Puts the first screen, the entry's styles and the content policy into `index.html`; gives the policy.
 *
 * @param lesson the scripts that open a lesson's link
 * @param firstVisit those of a first visit
 */
async function finishPage(
  out: string,
  lesson: readonly string[],
  firstVisit: readonly string[],
): Promise<string> {
  const file = resolve(out, 'index.html');
  let html = await readFile(file, 'utf8');
  const links = [...html.matchAll(/<link rel="stylesheet"[^>]*href="\.\/([^"]+)"[^>]*>/g)];
  const styles: string[] = [];
  for (const [link, path] of links) {
    const css = (await readFile(resolve(out, path!), 'utf8')).trim();
    // Scripts that want these styles look for the link (`fetched.ts`); disabled it is not fetched itself.
    const inert = `<link rel="stylesheet" disabled href="./${path}">`;
    html = html.replace(link, () => `<style>${css}</style>${inert}`);
    styles.push(hash(css));
    await rm(resolve(out, path!));
  }
  html = html.replace('</head>', (end) => `${asksFor(lesson, firstVisit)}\n  ${end}`);
  const scripts = [...html.matchAll(/<script>(.*?)<\/script>/gs)].map(([, code]) => hash(code!));
  const policy = contentPolicy(styles, scripts);
  const screen = await firstScreen();
  html = html.replace('data-early></div>', () => `data-early>${screen}</div>`);
  html = html.replace(
    '<meta charset="utf-8" />',
    (charset) => `${charset}\n<meta http-equiv="Content-Security-Policy" content="${policy}" />`,
  );
  await writeFile(file, html);
  return policy;
}

/** A script by its name, with what it imports beside the page's own. */
function scriptsOf(bundle: Rolldown.OutputBundle, script: string): string[] {
  const chunks = Object.values(bundle).filter((file) => file.type === 'chunk');
  const isEntry = (name: string) => chunks.some((one) => one.fileName === name && one.isEntry);
  const found = chunks.find(({ name }) => name === script);
  if (!found) throw new Error(`There is no script ${script}.`);
  return [found.fileName, ...found.imports.filter((name) => !isEntry(name))];
}

/** Has scripts come with the page's own, not behind it: those that open it where the address holds a lesson, else a first visit's. */
function asksFor(lesson: readonly string[], firstVisit: readonly string[]): string {
  const list = (scripts: readonly string[]) => `[${scripts.map((name) => `'./${name}'`).join()}]`;
  return `<script>
      for (const href of location.hash.startsWith('#/lesson/') ? ${list(lesson)}
        : 'begun' in document.documentElement.dataset ? [] : ${list(firstVisit)})
        document.head.append(
          Object.assign(document.createElement('link'), { rel: 'modulepreload', crossOrigin: '', href }),
        );
    </script>`;
}

/** What a first visit shows. It is drawn without a browser: of one it sees an empty address, and nobody who listens. */
async function firstScreen(): Promise<string> {
  const browser = {
    location: { hash: '' },
    document: { documentElement: { dataset: {} }, addEventListener() {} },
    addEventListener() {},
  };
  Object.assign(globalThis, browser);
  const source = resolve(import.meta.dirname, 'firstScreen.tsx');
  const { module } = await runnerImport<{ firstScreen: string }>(source, RUN);
  for (const name of Object.keys(browser)) Reflect.deleteProperty(globalThis, name);
  // The policy takes no styles of single elements; they come with the script.
  return module.firstScreen.replaceAll(/ style="[^"]*"/g, '');
}

/** How the policy names what stands in the page itself. */
function hash(text: string): string {
  return `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
}

/** What the page may load: its own files only. Tone's clock runs in a worker from a `blob:` address. */
function contentPolicy(styles: readonly string[], scripts: readonly string[]): string {
  return [
    `default-src 'none'`,
    `script-src 'self' ${scripts.join(' ')}`,
    `style-src 'self' ${styles.join(' ')}`,
    `img-src 'self' data:`,
    `connect-src 'self'`,
    `worker-src 'self' blob:`,
    `manifest-src 'self'`,
    `base-uri 'none'`,
    `form-action 'none'`,
  ].join('; ');
}

function policyOf(html: string): string {
  return /http-equiv="Content-Security-Policy" content="([^"]+)"/.exec(html)?.[1] ?? '';
}

/** Headers that a host should send; `frame-ancestors` works in a header only. */
function headers(policy: string): [string, string][] {
  return [
    ['Content-Security-Policy', `${policy}; frame-ancestors 'none'`],
    ['X-Content-Type-Options', 'nosniff'],
    ['Referrer-Policy', 'no-referrer'],
    ['Permissions-Policy', 'camera=(), geolocation=(), microphone=(self)'],
  ];
}

/** The same headers in the form that several static hosts read from the site's top folder. */
function headersFile(policy: string): string {
  return `/*\n${headers(policy)
    .map(([name, value]) => `  ${name}: ${value}\n`)
    .join('')}`;
}

async function buildWorker(source: string, out: string): Promise<void> {
  await build({
    configFile: false,
    logLevel: 'warn',
    define: { 'process.env.NODE_ENV': '"production"' },
    build: {
      outDir: out,
      emptyOutDir: false,
      copyPublicDir: false,
      lib: { entry: source, formats: ['iife'], name: 'worker', fileName: () => 'worker.js' },
    },
  });
  const { warnings } = await injectManifest({
    swSrc: resolve(out, 'worker.js'),
    swDest: resolve(out, 'worker.js'),
    globDirectory: out,
    globPatterns: ['**/*.{html,js,css,json,svg,png,txt,webmanifest}'],
    // The system keeps the icons of an installed app itself.
    globIgnores: ['worker.js', 'icon-*.png'],
  });
  if (warnings.length > 0) throw new Error(warnings.join('\n'));
}
