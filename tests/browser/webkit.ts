import { type ChildProcess, spawn } from 'node:child_process';
import { createServer } from 'node:net';
import type { AddressInfo } from 'node:net';
import { until, type EnginePage } from './engine.ts';

/**
 * A page in WebKit, the engine of iPhones, here in WebKitGTK's own small browser on a screen that nobody sees, driven by
 * the W3C's WebDriver protocol (w3.org/TR/webdriver2). Each start is of a browser that has kept nothing. Its window is
 * never narrower than 447 px.
 */
export async function openWebKit(): Promise<EnginePage> {
  const screen = spawn('Xvfb', ['-displayfd', '1', '-screen', '0', '1400x1000x24'], {
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  const display = await new Promise<string>((resolve) =>
    screen.stdout.once('data', (text: Buffer) => resolve(`:${text.toString().trim()}`)),
  );
  const port = await freePort();
  const driver = spawn('WebKitWebDriver', [`--port=${port}`], {
    stdio: 'ignore',
    env: {
      ...process.env,
      DISPLAY: display,
      GDK_BACKEND: 'x11',
      LIBGL_ALWAYS_SOFTWARE: '1',
      // Root may not be put into a sandbox, and containers are run as root.
      WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS: '1',
    },
  });
  try {
    return await newSession(`http://127.0.0.1:${port}`, [driver, screen]);
  } catch (error) {
    for (const process of [driver, screen]) process.kill();
    throw error;
  }
}

/** The key under which the protocol hands over elements. */
const ELEMENT = 'element-6066-11e4-a52e-4f735466cecf';

async function newSession(driver: string, processes: ChildProcess[]): Promise<EnginePage> {
  const capabilities = { alwaysMatch: { 'webkitgtk:browserOptions': { args: ['--automation'] } } };
  await until(() =>
    order(driver, 'GET', '/status').then(
      () => true,
      () => false,
    ),
  );
  const { sessionId } = await order<{ sessionId: string }>(driver, 'POST', '/session', {
    capabilities,
  });
  const session = `${driver}/session/${sessionId}`;
  const post = <T>(path: string, body: object) => order<T>(session, 'POST', path, body);
  const evaluate = <A, T>(run: (argument: A) => T, argument: A) =>
    post<Awaited<T>>('/execute/sync', {
      script: `return (${run})(arguments[0])`,
      args: [argument],
    });
  const isThere = (selector: string) =>
    evaluate((wanted) => document.querySelector(wanted) !== null, selector);
  const waitFor = (selector: string) => until(() => isThere(selector));
  const inside = () => evaluate(() => [innerWidth, innerHeight] as const, null);
  return {
    evaluate,
    waitFor,
    goto: (url) => post('/url', { url }),
    async tap(selector) {
      const press = async () => {
        const found = await post<Record<string, string>>('/element', {
          using: 'css selector',
          value: selector,
        });
        await post(`/element/${found[ELEMENT]}/click`, {});
        return true;
      };
      await until(() => press().catch(unlessGone));
    },
    async resize(width, height) {
      await until(async () => {
        const [w, h] = await inside();
        if (w === width && h === height) return true;
        // The window is larger by its edges, and slow: asked again, the page may have another size.
        const window = await order<{ width: number; height: number }>(
          session,
          'GET',
          '/window/rect',
        );
        await post('/window/rect', {
          width: window.width + width - w,
          height: window.height + height - h,
        });
        await new Promise((resolve) => setTimeout(resolve, 200));
        return false;
      });
    },
    async close() {
      await order(session, 'DELETE', '');
      for (const process of processes) process.kill();
    },
  };
}

/** What is drawn anew between being found and being pressed is to be found again; any other error is one. */
function unlessGone(error: Error): false {
  if (/no such element|stale element reference/.test(error.message)) return false;
  throw error;
}

async function order<T>(base: string, method: string, path: string, body?: object): Promise<T> {
  const answer = await fetch(base + path, {
    method,
    body: body ? JSON.stringify(body) : null,
    signal: AbortSignal.timeout(30_000),
  });
  const { value } = (await answer.json()) as { value: T };
  if (!answer.ok) throw new Error(`WebKit, asked to ${path}: ${JSON.stringify(value)}`);
  return value;
}

function freePort(): Promise<number> {
  return new Promise((resolve) => {
    const server = createServer().listen(0, '127.0.0.1', () => {
      const { port } = server.address() as AddressInfo;
      server.close(() => resolve(port));
    });
  });
}
