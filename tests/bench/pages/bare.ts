/** Serves the bare page, compressed, as the app is served. */
import { readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { resolve } from 'node:path';
import { gzipSync } from 'node:zlib';
import { build, type Rolldown } from 'vite';

/** The address that it is served at, until it is closed. */
export async function serveBare(): Promise<{ address: string; close(): void }> {
  const page = gzipSync(await bare());
  const server = createServer((request, response) => {
    if (request.url !== '/') return response.writeHead(404).end();
    response.writeHead(200, { 'content-type': 'text/html', 'content-encoding': 'gzip' });
    return response.end(page);
  });
  await new Promise<void>((listening) => server.listen(0, listening));
  const { port } = server.address() as AddressInfo;
  return { address: `http://localhost:${port}/`, close: () => server.close() };
}

/** With the app's own styles and the script in the page: nothing else is fetched. */
async function bare(): Promise<string> {
  const { output } = (await build({
    configFile: false,
    logLevel: 'error',
    oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
    build: { write: false, rolldownOptions: { input: resolve(import.meta.dirname, 'bare.tsx') } },
  })) as Rolldown.RolldownOutput;
  const [style] = /<style>.*?<\/style>/s.exec(readFileSync('dist/index.html', 'utf8'))!;
  return `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Bare</title>${style}
    <script>addEventListener('click', ({ target }) => target.setAttribute('data-tapped', ''))</script></head>
    <body><div id="app"><main><h1>A page</h1><button type="button" data-do="start">Begin</button></main></div>
    <script type="module">${output[0].code}</script></body></html>`;
}
