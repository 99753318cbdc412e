import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestContext } from 'vitest';
import WebSocket from 'ws';

/** Where Debian's packages put the browser. */
const PLACES = [process.env.FIREFOX, '/usr/bin/firefox-esr', '/usr/bin/firefox'];

/** What Firefox sends: the answer to a command by its number, or an event. */
interface Sent {
  readonly id?: number;
  readonly result?: Readonly<Record<string, unknown>>;
  readonly message?: string;
  readonly method?: string;
  readonly params?: { readonly level?: string; readonly text?: string };
}

/** A window of Firefox, driven as the W3C standard WebDriver BiDi says. */
export class Firefox {
  /** What the page complained of. */
  readonly complaints: string[] = [];
  /** The folder into which the browser saves. */
  readonly saved: string;
  private readonly home = mkdtempSync(join(tmpdir(), 'firefox-'));
  private readonly answers = new Map<number, (sent: Sent) => void>();
  private process: ChildProcess | undefined;
  private socket: WebSocket | undefined;
  private window = '';

  private constructor() {
    this.saved = join(this.home, 'saved');
    const wishes = {
      'browser.download.folderList': 2,
      'browser.download.dir': this.saved,
      'browser.shell.checkDefaultBrowser': false,
      'datareporting.policy.dataSubmissionEnabled': false,
      // Nothing is asked of any network.
      'network.proxy.type': 1,
      'network.proxy.http': '127.0.0.1',
      'network.proxy.http_port': 9,
      'network.proxy.ssl': '127.0.0.1',
      'network.proxy.ssl_port': 9,
    };
    const lines = Object.entries(wishes).map(([key, value]) => `user_pref("${key}", ${JSON.stringify(value)});\n`);
    writeFileSync(join(this.home, 'user.js'), lines.join(''));
  }

  /** Starts Firefox; where none is installed the test is skipped, with a word. */
  static async started(context: TestContext): Promise<Firefox> {
    const program = PLACES.find((place) => place !== undefined && existsSync(place));
    if (program === undefined)
      return context.skip('this test needs Firefox, and none was found: Debian’s is firefox-esr');
    const firefox = new Firefox();
    await firefox.start(program);
    return firefox;
  }

  /** Opens an address, and waits until the page is alive. */
  async open(url: string): Promise<void> {
    await this.command('browsingContext.navigate', { context: this.window, url, wait: 'complete' });
    await this.until("document.documentElement.classList.contains('is-alive')");
  }

  /** What an expression gives in the page. */
  async value<T>(expression: string): Promise<T> {
    const { result, exceptionDetails } = (await this.command('script.evaluate', {
      expression: `(async () => JSON.stringify(await (${expression})))()`,
      target: { context: this.window },
      awaitPromise: true,
      userActivation: true,
    })) as { result?: { value?: string }; exceptionDetails?: { text: string } };
    if (exceptionDetails !== undefined) throw new Error(`${expression}: ${exceptionDetails.text}`);
    return (result?.value === undefined ? undefined : JSON.parse(result.value)) as T;
  }

  /** Waits until an expression is true in the page; the time of the test is the limit. */
  async until(expression: string): Promise<void> {
    while (!(await this.value<boolean>(`Boolean(${expression})`))) await new Promise((go) => setTimeout(go, 50));
  }

  /** Presses a button by its words, in the element that a selector finds. */
  async press(words: string, within = 'body'): Promise<void> {
    const found = `[...document.querySelector(${JSON.stringify(within)}).querySelectorAll('button')].find((each) => each.textContent.trim() === ${JSON.stringify(words)})`;
    await this.value(`(${found}.click(), true)`);
  }

  /** Presses keys, one after the other. */
  async type(...keys: string[]): Promise<void> {
    const actions = keys.flatMap((value) => ['keyDown', 'keyUp'].map((type) => ({ type, value })));
    await this.command('input.performActions', {
      context: this.window,
      actions: [{ type: 'key', id: 'keys', actions }],
    });
  }

  async close(): Promise<void> {
    const gone = new Promise((go) => this.process?.once('exit', go));
    this.socket?.close();
    this.process?.kill();
    await gone;
    rmSync(this.home, { recursive: true, force: true, maxRetries: 5 });
  }

  private async start(program: string): Promise<void> {
    const firefox = spawn(program, ['--headless', '--remote-debugging-port', '0', '--profile', this.home], {
      stdio: ['ignore', 'ignore', 'pipe'],
      env: { ...process.env, HOME: this.home },
    });
    this.process = firefox;
    const address = await new Promise<string>((found, failed) => {
      let heard = '';
      firefox.stderr.on('data', (data) => {
        heard += data;
        const at = /WebDriver BiDi listening on (ws:\S+)/.exec(heard);
        if (at) found(at[1]!);
      });
      firefox.once('exit', () => failed(new Error(`Firefox ended: ${heard}`)));
    });
    this.socket = new WebSocket(`${address}/session`);
    await new Promise((open, failed) => this.socket!.once('open', open).once('error', failed));
    this.socket.on('message', (data) => this.heard(JSON.parse(String(data)) as Sent));
    await this.command('session.new', { capabilities: {} });
    await this.command('session.subscribe', { events: ['log.entryAdded'] });
    const made = (await this.command('browsingContext.create', { type: 'tab' })) as { context: string };
    this.window = made.context;
    // Keys go to the window that has the focus.
    await this.command('browsingContext.activate', { context: this.window });
  }

  private heard(sent: Sent): void {
    if (sent.id !== undefined) this.answers.get(sent.id)?.(sent);
    else if (sent.method === 'log.entryAdded' && sent.params?.text !== undefined)
      this.complaints.push(sent.params.text);
  }

  private command(method: string, params: object): Promise<unknown> {
    const id = this.answers.size + 1;
    return new Promise((done, failed) => {
      this.answers.set(id, ({ result, message }) =>
        message === undefined ? done(result) : failed(new Error(`${method}: ${message}`)),
      );
      this.socket!.send(JSON.stringify({ id, method, params }));
    });
  }
}
