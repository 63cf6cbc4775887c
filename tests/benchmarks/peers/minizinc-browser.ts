/** The solvers inside the `minizinc` package's WebAssembly build, run where that build runs: in a browser without a window. */
import chromium from '@sparticuz/chromium';
import { createServer } from 'node:http';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AddressInfo } from 'node:net';
import { dirname, join } from 'node:path';
import { chromium as playwright } from 'playwright-core';

/** What came of one run. Seconds are the solver's own count where it tells them. */
export interface PeerRun {
  readonly kind: 'optimal' | 'infeasible' | 'bounded' | 'none' | 'failed';
  readonly value: number | null;
  /** Values of the model's variables in the last plan. */
  readonly output: Readonly<Record<string, unknown>> | null;
  /** Turning the model into the solver's own form. */
  readonly flatSeconds: number;
  /** Posting the constraints and propagating them once. */
  readonly startSeconds: number;
  /** Search until the proof, or until it was stopped. */
  readonly solveSeconds: number;
  /** From the call to its end, by the page's clock. */
  readonly seconds: number;
  readonly words: string;
}

export interface MiniZincBrowser {
  /** Name and version of each solver inside. */
  readonly solvers: readonly string[];
  /** Seconds to load and compile the build, once. */
  readonly loadSeconds: number;
  readonly run: (text: string, solver: string, seconds: number) => Promise<PeerRun>;
  readonly close: () => Promise<void>;
}

/** Most seconds for flattening, which has no limit of its own. */
const flatSeconds = 120;

/** What the page gathers of a run; everything is JSON. */
interface Gathered {
  readonly status: string;
  readonly output: Record<string, unknown> | null;
  readonly statistics: Record<string, unknown>;
  /** Page milliseconds from the call: the flattened model was told, and the end. */
  readonly flatMs: number | null;
  readonly endMs: number;
  readonly words: string;
}

const types: Readonly<Record<string, string>> = {
  js: 'text/javascript',
  mjs: 'text/javascript',
  wasm: 'application/wasm',
  data: 'application/octet-stream',
};

/**
 * Starts a browser with the package's files served to it from `node_modules`. Its opener closes it.
 *
 * @throws Error where no browser can be started, or the build does not load in it
 */
export async function openMiniZinc(): Promise<MiniZincBrowser> {
  const folder = dirname(createRequire(join(process.cwd(), 'package.json')).resolve('minizinc/minizinc.wasm'));
  const server = createServer((request, response) => {
    const name = new URL(request.url ?? '/', 'http://localhost').pathname.slice(1);
    if (!/^minizinc[\w-]*\.(mjs|js|wasm|data)$/.test(name)) {
      response.writeHead(name === '' ? 200 : 404, { 'content-type': 'text/html' });
      response.end('<!doctype html><title>solvers</title>');
      return;
    }
    response.writeHead(200, { 'content-type': types[name.slice(name.lastIndexOf('.') + 1)] ?? 'text/plain' });
    response.end(readFileSync(join(folder, name)));
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  const browser = await playwright.launch({ executablePath: await chromium.executablePath(), args: chromium.args });
  const page = await browser.newPage();
  await page.goto(`http://127.0.0.1:${port}/`);
  const began = performance.now();
  // Sent as text: the bundler must not touch what runs in the page.
  const solvers = await page.evaluate<string[]>(pageSetup);
  const loadSeconds = (performance.now() - began) / 1000;
  return {
    solvers,
    loadSeconds,
    run: async (text, solver, seconds) =>
      told(await page.evaluate<Gathered>(`runModel(${JSON.stringify({ text, solver, seconds, flatSeconds })})`)),
    close: async () => {
      await browser.close();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}

/**
 * The build leaves its solvers' state behind, so each run has a worker of its own. All of them share one compiled module, so that
 * code which one has made fast is fast in the next, as in a page that has been open for a while.
 */
const pageSetup = `(async () => {
  const at = (name) => location.origin + '/' + name;
  const module = await WebAssembly.compileStreaming(fetch(at('minizinc.wasm')));
  const start = 'let module;' +
    'const take = ({ data }) => { module = data.module; removeEventListener("message", take);' +
    ' importScripts(' + JSON.stringify(at('minizinc-worker.js')) + '); postMessage({ type: "started" }); };' +
    'addEventListener("message", take);' +
    'WebAssembly.instantiateStreaming = async (source, imports) =>' +
    ' ({ module, instance: await WebAssembly.instantiate(module, imports) });';
  const script = URL.createObjectURL(new Blob([start], { type: 'text/javascript' }));
  const open = () => new Promise((resolve, reject) => {
    const worker = new Worker(script);
    worker.onerror = ({ message }) => reject(new Error(message));
    worker.onmessage = ({ data }) => {
      if (data.type === 'started') worker.postMessage({ wasmURL: at('minizinc.wasm'), dataURL: at('minizinc.data') });
      if (data.type === 'ready') resolve(worker);
    };
    worker.postMessage({ module });
  });
  window.runModel = async ({ text, solver, seconds, flatSeconds }) => {
    const worker = await open();
    const gathered = { status: 'UNKNOWN', output: null, statistics: {}, flatMs: null, endMs: 0, words: '' };
    const began = performance.now();
    let timer;
    await new Promise((resolve) => {
      timer = setTimeout(resolve, flatSeconds * 1000);
      worker.onerror = ({ message }) => resolve((gathered.words = message));
      worker.onmessage = ({ data }) => {
        if (data.type === 'statistics') {
          Object.assign(gathered.statistics, data.statistics);
          if ('flatTime' in data.statistics && gathered.flatMs === null) {
            gathered.flatMs = performance.now() - began;
            clearTimeout(timer);
            timer = setTimeout(resolve, seconds * 1000 + 2000);
          }
        }
        if (data.type === 'solution') gathered.output = data.output.json ?? null;
        if (data.type === 'status') gathered.status = data.status;
        // A conflict at the root is told in words, past the stream of JSON.
        if (data.type === 'stdout' && data.value.includes('=====UNSATISFIABLE=====')) gathered.status = 'UNSATISFIABLE';
        if (data.type === 'error') gathered.words = data.message;
        if (data.type === 'exit') resolve();
      };
      const free = solver.includes('chuffed') ? ['-f'] : [];
      const limit = ['--solver-time-limit', String(Math.ceil(seconds * 1000))];
      const args = ['-i', '--output-mode', 'json', '--statistics', '--solver', solver, ...free, ...limit, 'asked.mzn'];
      worker.postMessage({ jsonStream: true, files: { 'asked.mzn': text }, args });
    });
    gathered.endMs = performance.now() - began;
    clearTimeout(timer);
    worker.terminate();
    return gathered;
  };
  const worker = await open();
  const listed = await new Promise((resolve) => {
    worker.onmessage = ({ data }) => data.type === 'exit' && resolve(JSON.parse(data.stdout));
    worker.postMessage({ jsonStream: false, args: ['--solvers-json'] });
  });
  worker.terminate();
  return listed.map(({ name, version }) => name + ' ' + version);
})()`;

function told(gathered: Gathered): PeerRun {
  const { statistics, output } = gathered;
  const number = (name: string): number | null => {
    const value = statistics[name];
    return typeof value === 'number' ? value : null;
  };
  const kinds: Readonly<Record<string, PeerRun['kind']>> = {
    OPTIMAL_SOLUTION: 'optimal',
    ALL_SOLUTIONS: 'optimal',
    UNSATISFIABLE: 'infeasible',
  };
  const kind = kinds[gathered.status] ?? (gathered.flatMs === null ? 'failed' : output === null ? 'none' : 'bounded');
  const flatMs = gathered.flatMs ?? gathered.endMs;
  return {
    kind,
    value: typeof output?.['goal'] === 'number' ? output['goal'] : null,
    output,
    flatSeconds: number('flatTime') ?? flatMs / 1000,
    // The solver counts this from the start of the program, flattening included.
    startSeconds: Math.max(0, (number('initTime') ?? 0) - (number('flatTime') ?? 0)),
    solveSeconds: number('solveTime') ?? (gathered.endMs - flatMs) / 1000,
    seconds: gathered.endMs / 1000,
    words: gathered.words,
  };
}
