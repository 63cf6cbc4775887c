// Builds one Node entry of the project when its sources are newer than the last build, then runs it.
// Usage: node .config/run.mjs ENTRY.ts [arguments…]
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const WORKER = 'app/solving/worker.ts';

/** Newest modification time below a folder or of a file, ms; 0 where there is none. */
function newest(path) {
  const stat = statSync(path, { throwIfNoEntry: false });
  if (stat === undefined) return 0;
  if (!stat.isDirectory()) return stat.mtimeMs;
  return Math.max(stat.mtimeMs, ...readdirSync(path).map((name) => newest(join(path, name))));
}

/** Where the build of an entry goes. */
function placesOf(entry) {
  const out = join(root, '.out', 'node', entry.replace(/\.ts$/, '').replaceAll('/', '-'));
  return { out, file: join(out, `${basename(entry, '.ts')}.js`), stamp: join(out, 'stamp') };
}

/** Whether the last build of an entry is newer than everything it may be made of. */
function isFresh(entry) {
  const { file, stamp } = placesOf(entry);
  const sources = [
    'app',
    'solver',
    'renderer',
    '.config',
    'package.json',
    ...(entry.startsWith('tests') ? ['tests'] : []),
  ];
  const changed = Math.max(...sources.map((source) => newest(join(root, source))));
  return existsSync(file) && newest(stamp) > changed;
}

/**
 * Bundles `entry` (a path from the root) into `.out/node/`, with the solver's thread beside it as `worker.js`, unless that is up
 * to date.
 * @returns the absolute path of the built module
 */
export async function buildNodeEntry(entry) {
  const { out, file } = placesOf(entry);
  if (isFresh(entry)) return file;
  // Built aside and then moved, so that two runs at once never see half a build.
  const aside = `${out}.${process.pid}`;
  const began = new Date();
  const { build } = await import('vite');
  await build({
    root,
    configFile: false,
    logLevel: 'warn',
    build: {
      ssr: true,
      outDir: aside,
      emptyOutDir: true,
      target: 'node20',
      sourcemap: true,
      rollupOptions: {
        checks: { bundlerTimings: false },
        input: [...new Set([entry, WORKER])].map((path) => join(root, path)),
        output: { entryFileNames: '[name].js', format: 'es' },
      },
    },
  });
  writeFileSync(join(aside, 'stamp'), began.toISOString());
  mkdirSync(join(root, '.out', 'node'), { recursive: true });
  rmSync(out, { recursive: true, force: true });
  try {
    renameSync(aside, out);
  } catch (error) {
    rmSync(aside, { recursive: true, force: true });
    // Another run was quicker with the same build.
    if (!existsSync(file)) throw error;
  }
  return file;
}

/** Builds an entry if need be and runs it as though it had been called itself. */
export async function runNodeEntry(entry, args) {
  // Built in a process of its own, so that the build's memory is not counted as the program's.
  if (!isFresh(entry))
    execFileSync(process.execPath, [fileURLToPath(import.meta.url), '--build', entry], { stdio: 'inherit' });
  const file = await buildNodeEntry(entry);
  process.argv = [process.argv[0], file, ...args];
  await import(pathToFileURL(file).href);
}

if (process.argv[1] && resolve(process.argv[1]) === fileURLToPath(import.meta.url)) {
  const [entry, ...rest] = process.argv.slice(2);
  if (entry === '--build') await buildNodeEntry(rest[0]);
  else await runNodeEntry(entry, rest);
}
