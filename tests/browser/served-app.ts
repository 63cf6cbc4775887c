/** The app as `npm start` serves it, open in a real browser; or the reason why it cannot be. */
import chromium from '@sparticuz/chromium';
import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium as playwright, type Browser, type Page } from 'playwright-core';

const root = fileURLToPath(new URL('../..', import.meta.url));

export interface ServedApp {
  readonly page: Page;
  /** Errors and warnings of the page's console, and the end of the program before its time. */
  readonly complaints: readonly string[];
  readonly address: string;
  /** The data folder, empty at first. */
  readonly data: string;
  readonly close: () => Promise<void>;
}

async function launch(): Promise<Browser | string> {
  try {
    const executablePath = await chromium.executablePath();
    return await playwright.launch({ executablePath, args: chromium.args });
  } catch (error) {
    return `no browser can be started here: ${String(error).split('\n')[0]}`;
  }
}

/** Why no browser can be started on this machine; null where one can. */
export async function whyNoBrowser(): Promise<string | null> {
  const browser = await launch();
  if (typeof browser === 'string') return browser;
  await browser.close();
  return null;
}

/** Starts the web host on a free port; resolves with the address that it prints. */
function serve(
  data: string,
  ended: (words: string) => void,
): Promise<{ readonly address: string; readonly child: ChildProcess }> {
  const child = spawn(
    process.execPath,
    [join(root, '.config/run.mjs'), 'app/start.ts', '--web', '--no-open', '--data', data],
    { cwd: root, stdio: ['ignore', 'pipe', 'pipe'] },
  );
  return new Promise((resolve, reject) => {
    let said = '';
    const hear = (chunk: Buffer): void => {
      said += chunk.toString();
      const address = /http:\/\/127\.0\.0\.1:\d+\/#code=\S+/.exec(said)?.[0];
      if (address !== undefined) resolve({ address, child });
    };
    child.stdout.on('data', hear);
    child.stderr.on('data', hear);
    child.once('exit', (code, signal) => {
      ended(`the app ended with ${code ?? signal}: ${said}`);
      reject(new Error(said));
    });
  });
}

/** Opens the app, paired, in a window of its own. Its opener closes it. */
export async function openApp(): Promise<ServedApp> {
  const data = mkdtempSync(join(tmpdir(), 'afterheat-browser-'));
  const complaints: string[] = [];
  const { address, child } = await serve(data, (words) => complaints.push(words));
  const browser = await launch();
  if (typeof browser === 'string') throw new Error(browser);
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 }, colorScheme: 'light' });
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  await page.goto(address);
  return {
    page,
    complaints,
    address,
    data,
    close: async () => {
      await browser.close();
      child.kill('SIGTERM');
      rmSync(data, { recursive: true, force: true });
    },
  };
}
