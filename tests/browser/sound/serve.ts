import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { extname, join } from 'node:path';
import { build } from 'vite';
import { tone } from '../../../src/host/tone.ts';

/** The content policy that sound has to live with, whatever else a page may load. */
const POLICY =
  "default-src 'none'; script-src 'self'; worker-src 'self' blob:; connect-src 'self'; media-src 'none'";

const TYPES: Readonly<Record<string, string>> = { '.html': 'text/html', '.js': 'text/javascript' };

/** A server of this folder's page. */
export interface Served {
  readonly url: string;
  /** Where the built files are. */
  readonly folder: string;
  close(): Promise<void>;
}

/** Builds the page of a folder, this one where none is named, and serves it. */
export async function servePage(root = import.meta.dirname): Promise<Served> {
  const folder = await mkdtemp(join(tmpdir(), 'skipwise-sound-'));
  await build({
    configFile: false,
    root,
    base: './',
    logLevel: 'error',
    plugins: [tone()],
    build: { outDir: folder, assetsInlineLimit: 0, modulePreload: { polyfill: false } },
  });
  const server = createServer(async (request, response) => {
    const path = request.url === '/' ? '/index.html' : request.url!;
    const file = await readFile(join(folder, path)).catch(() => null);
    response.writeHead(file ? 200 : 404, {
      'Content-Type': TYPES[extname(path)] ?? 'text/plain',
      'Content-Security-Policy': POLICY,
    });
    response.end(file);
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return {
    folder,
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`,
    async close() {
      server.close();
      await rm(folder, { recursive: true });
    },
  };
}

/** Prints measured figures. */
export function print(what: string, figures: object): void {
  const short = (_: string, value: unknown) =>
    typeof value === 'number' ? Number(value.toPrecision(3)) : value;
  console.log(`${what}: ${JSON.stringify(figures, short)}`);
}
