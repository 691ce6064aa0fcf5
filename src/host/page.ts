import { createHash } from 'node:crypto';
import { readFile, rm, writeFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import compression from 'compression';
import { build, type Connect, type Plugin, type ResolvedConfig, type Rolldown } from 'vite';
import { injectManifest } from 'workbox-build';
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
        const policy = await finishPage(out, firstChunks(bundle));
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

/** The scripts of the first screen: asked for together with the page, not after its entry has run. */
function firstChunks(bundle: Rolldown.OutputBundle): string[] {
  const chunks = Object.values(bundle).filter((file) => file.type === 'chunk');
  const wanted = new Set<string>();
  const want = (fileName: string) => {
    const chunk = chunks.find((other) => other.fileName === fileName);
    if (!chunk || chunk.isEntry || wanted.has(fileName)) return;
    wanted.add(fileName);
    chunk.imports.forEach(want);
  };
  for (const chunk of chunks) {
    if (/\/app\/(shell\/open\.ts|today\/Today\.tsx)$/.test(chunk.facadeModuleId ?? ''))
      want(chunk.fileName);
  }
  return [...wanted];
}

/** Puts the entry's styles and the content policy into `index.html`; gives the policy. */
async function finishPage(out: string, preload: readonly string[]): Promise<string> {
  const file = resolve(out, 'index.html');
  let html = await readFile(file, 'utf8');
  const links = [...html.matchAll(/<link rel="stylesheet"[^>]*href="\.\/([^"]+)"[^>]*>/g)];
  const hashes: string[] = [];
  for (const [link, path] of links) {
    const css = (await readFile(resolve(out, path!), 'utf8')).trim();
    html = html.replace(link, () => `<style>${css}</style>`);
    hashes.push(`'sha256-${createHash('sha256').update(css).digest('base64')}'`);
    await rm(resolve(out, path!));
  }
  const policy = contentPolicy(hashes);
  html = html.replace(
    '<meta charset="utf-8" />',
    (charset) => `${charset}\n<meta http-equiv="Content-Security-Policy" content="${policy}" />`,
  );
  const hints = preload.map((path) => `<link rel="modulepreload" crossorigin href="./${path}" />`);
  html = html.replace('</head>', () => `${hints.join('\n')}\n</head>`);
  await writeFile(file, html);
  return policy;
}

/** What the page may load: its own files only. Tone's clock runs in a worker from a `blob:` address. */
function contentPolicy(styleHashes: readonly string[]): string {
  return [
    `default-src 'none'`,
    `script-src 'self'`,
    `style-src 'self' ${styleHashes.join(' ')}`,
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
    globIgnores: ['worker.js'],
  });
  if (warnings.length > 0) throw new Error(warnings.join('\n'));
}
