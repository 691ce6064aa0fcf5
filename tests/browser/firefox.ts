import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { setTimeout } from 'node:timers/promises';
import { WebSocket } from 'ws';
import { until, type EnginePage } from './engine.ts';

/** How long an order may go without an answer, ms. */
const PATIENCE = 60_000;

const PREFERENCES = {
  // Sound begins without a gesture, as in the other engines here.
  'media.autoplay.default': 0,
  'media.autoplay.blocking_policy': 0,
  // The page speaks to the loudspeaker itself: through the browser's process it was one time in five held for ever.
  'media.cubeb.sandbox': false,
  'security.sandbox.content.level': 0,
};

/**
 * A page in Firefox, Debian's `firefox-esr`, driven by the W3C's WebDriver BiDi protocol (w3.org/TR/webdriver-bidi), which
 * it speaks by itself. Each start is of a browser that has kept nothing.
 */
export async function openFirefox(): Promise<EnginePage> {
  const profile = await mkdtemp(join(tmpdir(), 'skipwise-firefox-'));
  const lines = Object.entries(PREFERENCES).map(
    ([name, value]) => `user_pref("${name}", ${value});\n`,
  );
  await writeFile(join(profile, 'user.js'), lines.join(''));
  const loudspeaker = new Loudspeaker(profile);
  const firefox = spawn(
    'firefox-esr',
    ['--headless', '--no-remote', '--remote-debugging-port=0', '--profile', profile],
    {
      stdio: ['ignore', 'ignore', 'pipe'],
      env: { ...process.env, PULSE_SERVER: loudspeaker.address },
    },
  );
  const close = async () => {
    await Promise.all([ended(firefox), ended(loudspeaker.process)]);
    await rm(profile, { recursive: true, force: true });
  };
  try {
    return await newSession(await addressOf(firefox), close);
  } catch (error) {
    await close();
    throw error;
  }
}

/** A loudspeaker that nobody hears: a clock of sound goes by what it takes. */
class Loudspeaker {
  readonly address: string;
  readonly process: ChildProcess;

  /** @param folder in which it may leave what it needs */
  constructor(folder: string) {
    const socket = join(folder, 'loudspeaker');
    this.address = `unix:${socket}`;
    this.process = spawn(
      'pulseaudio',
      [
        ['-n', '--daemonize=no', '--use-pid-file=no', '--exit-idle-time=-1'],
        ['--load=module-null-sink'],
        [`--load=module-native-protocol-unix auth-anonymous=1 socket=${socket}`],
      ].flat(),
      { stdio: 'ignore', env: { ...process.env, HOME: folder, XDG_RUNTIME_DIR: folder } },
    );
  }
}

/** Ends a program and waits until it has ended. */
function ended(program: ChildProcess): Promise<unknown> {
  const end = new Promise((resolve) => program.once('exit', resolve));
  return program.kill() ? end : Promise.resolve();
}

/** Where it listens, as it says on its second output. */
async function addressOf(firefox: ChildProcess): Promise<string> {
  for await (const line of createInterface(firefox.stderr!)) {
    const said = /WebDriver BiDi listening on (?<address>ws:\S+)/.exec(line);
    if (said) {
      // Goes on being read: a program whose words nobody takes comes to a halt.
      firefox.stderr!.resume();
      return `${said.groups!.address}/session`;
    }
  }
  throw new Error('Firefox ended before it listened.');
}

type Order = <T>(method: string, params: object) => Promise<T>;

async function newSession(address: string, close: () => Promise<void>): Promise<EnginePage> {
  const order = await connected(address);
  await order('session.new', { capabilities: {} });
  const { context } = await order<{ context: string }>('browsingContext.create', { type: 'tab' });
  const evaluate = async <A, T>(run: (argument: A) => T, argument: A): Promise<Awaited<T>> => {
    const { result } = await order<{ result: { value: string } }>('script.callFunction', {
      // Values travel as JSON: what the protocol makes of them is its own.
      functionDeclaration: `async (json) => JSON.stringify((await (${run})(JSON.parse(json))) ?? null)`,
      arguments: [{ type: 'string', value: JSON.stringify(argument) }],
      target: { context },
      awaitPromise: true,
      userActivation: true,
    });
    return JSON.parse(result.value) as Awaited<T>;
  };
  const waitFor = (selector: string) =>
    until(() => evaluate((wanted) => document.querySelector(wanted) !== null, selector));
  return {
    evaluate,
    waitFor,
    close,
    goto: (url) => order('browsingContext.navigate', { context, url, wait: 'complete' }),
    async tap(selector) {
      await waitFor(selector);
      await evaluate(
        (wanted) => document.querySelector(wanted)!.scrollIntoView({ block: 'center' }),
        selector,
      );
      const { nodes } = await order<{ nodes: { sharedId: string }[] }>(
        'browsingContext.locateNodes',
        { context, locator: { type: 'css', value: selector }, maxNodeCount: 1 },
      );
      await order('input.performActions', { context, actions: [pressOn(nodes[0]!.sharedId)] });
    },
    async resize(width, height) {
      await order('browsingContext.setViewport', { context, viewport: { width, height } });
    },
  };
}

/** A press of a finger on the middle of an element. */
function pressOn(sharedId: string): object {
  return {
    type: 'pointer',
    id: 'finger',
    parameters: { pointerType: 'touch' },
    actions: [
      { type: 'pointerMove', x: 0, y: 0, origin: { type: 'element', element: { sharedId } } },
      { type: 'pointerDown', button: 0 },
      { type: 'pointerUp', button: 0 },
    ],
  };
}

/** Sends orders over a socket, each of which has its answer. */
async function connected(address: string): Promise<Order> {
  const socket = new WebSocket(address);
  await new Promise((resolve, reject) => socket.once('open', resolve).once('error', reject));
  const waiting = new Map<number, (answer: Answer) => void>();
  socket.on('message', (data: Buffer) => {
    const answer = JSON.parse(data.toString()) as Answer;
    waiting.get(answer.id)?.(answer);
    waiting.delete(answer.id);
  });
  let last = 0;
  return async <T>(method: string, params: object) => {
    const id = ++last;
    const answered = new Promise<Answer>((resolve) => waiting.set(id, resolve));
    socket.send(JSON.stringify({ id, method, params }));
    const { result, error, message } = await Promise.race([answered, tooLate(method, params)]);
    if (error) throw new Error(`Firefox, asked for ${method}: ${error}: ${message}`);
    return result as T;
  };
}

async function tooLate(method: string, params: object): Promise<never> {
  await setTimeout(PATIENCE, null, { ref: false });
  throw new Error(`Firefox, asked for ${method}, gave no answer: ${JSON.stringify(params)}`);
}

interface Answer {
  readonly id: number;
  readonly result?: unknown;
  readonly error?: string;
  readonly message?: string;
}
