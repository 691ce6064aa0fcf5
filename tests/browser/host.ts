import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { extname, join } from 'node:path';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.css': 'text/css',
  '.js': 'text/javascript',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.webmanifest': 'application/manifest+json',
};

/** A plain static host with the built app on it: no headers of its own, nothing compressed. */
export interface Host {
  readonly url: string;
  /** Changes the text of a file, as the publication of a new version does. */
  change(file: string, change: (text: string) => string): Promise<void>;
  /** From now on nobody answers: the phone is offline. */
  fallSilent(): Promise<void>;
  close(): Promise<void>;
}

/** Serves a copy of `dist` under a path such as `/` or `/some/path/`. */
export async function openHost(under = '/'): Promise<Host> {
  const folder = await mkdtemp(join(tmpdir(), 'skipwise-host-'));
  await cp(join(import.meta.dirname, '../../dist'), folder, { recursive: true });
  const server = createServer(async (request, response) => {
    const { pathname } = new URL(request.url!, 'http://localhost');
    const path = pathname.startsWith(under) ? pathname.slice(under.length) || 'index.html' : null;
    const file = path && (await readFile(join(folder, path)).catch(() => null));
    response.writeHead(file ? 200 : 404, {
      'Content-Type': TYPES[extname(path ?? '')] ?? 'text/plain',
    });
    response.end(file);
  });
  await new Promise<void>((resolve) => server.listen(0, 'localhost', resolve));
  const fallSilent = () =>
    new Promise<void>((resolve) => {
      server.close(() => resolve());
      server.closeAllConnections();
    });
  return {
    url: `http://localhost:${(server.address() as AddressInfo).port}${under}`,
    async change(file, change) {
      const text = await readFile(join(folder, file), 'utf8');
      const changed = change(text);
      if (changed === text) throw new Error(`Nothing to change was found in ${file}.`);
      await writeFile(join(folder, file), changed);
    },
    fallSilent,
    async close() {
      if (server.listening) await fallSilent();
      await rm(folder, { recursive: true });
    },
  };
}
