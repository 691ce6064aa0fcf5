import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';

interface Package {
  readonly name: string;
  readonly version: string;
  readonly license?: string;
  readonly dependencies?: Readonly<Record<string, string>>;
}

/** The notices of every library that may be in the built page, with those that they bring: name, licence and its text. */
export async function notices(root: string): Promise<string> {
  const own = await packageIn(root);
  const found = new Map<string, string>();
  const waiting = Object.keys(own.dependencies ?? {});
  for (let name = waiting.pop(); name !== undefined; name = waiting.pop()) {
    // Types, and what old engines lack, are in no page.
    if (found.has(name) || /^@(types|babel)\//.test(name)) continue;
    const folder = join(root, 'node_modules', name);
    const one = await packageIn(folder);
    found.set(name, await notice(one, folder));
    waiting.push(...Object.keys(one.dependencies ?? {}));
  }
  const all = [...found].toSorted(([a], [b]) => (a < b ? -1 : 1)).map(([, text]) => text);
  return `Skipwise is made with these libraries.\n\n${all.join('\n\n')}\n`;
}

async function packageIn(folder: string): Promise<Package> {
  return JSON.parse(await readFile(join(folder, 'package.json'), 'utf8')) as Package;
}

/** @throws Error where a library says nothing of its licence: it may not be handed on so */
async function notice({ name, version, license }: Package, folder: string): Promise<string> {
  if (!license) throw new Error(`${name} names no licence.`);
  const text = (await licenceText(folder)) ?? 'It brings no text of it.';
  return `${'='.repeat(72)}\n${name} ${version} · ${license}\n\n${unwrapped(text.trim())}`;
}

/** Each paragraph in one line: a phone breaks it where its screen ends, and what all licences say presses well. */
function unwrapped(text: string): string {
  return text.replaceAll(/[ \t]+$/gm, '').replaceAll(/(?<=[^\n])\n[ \t]*(?=[^\s])/g, ' ');
}

/** A library's licence: a file of its own, or what its README has under that heading. */
async function licenceText(folder: string): Promise<string | undefined> {
  const files = await readdir(folder);
  const read = (name: RegExp) => {
    const file = files.find((one) => name.test(one));
    return file && readFile(join(folder, file), 'utf8');
  };
  const own = await read(/^(licen[cs]e|copying)/i);
  if (own) return own;
  return /^#+\s*licen[cs]e\s*\n(?<text>.+)/ims.exec((await read(/^readme/i)) ?? '')?.groups?.text;
}
