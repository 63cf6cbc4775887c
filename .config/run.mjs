// Builds one Node entry of the project when its sources are newer than the last build, then runs it.
// Usage: node .config/run.mjs ENTRY.ts [arguments…]
import { mkdirSync, readdirSync, statSync, writeFileSync, existsSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));

/** Newest modification time below a folder or of a file, ms. */
function newest(path) {
  const stat = statSync(path);
  if (!stat.isDirectory()) return stat.mtimeMs;
  return Math.max(stat.mtimeMs, ...readdirSync(path).map((name) => newest(join(path, name))));
}

/**
 * Bundles `entry` (a path from the root) into `.out/node/`, unless that is up to date.
 * @returns the absolute path of the built module
 */
export async function buildNodeEntry(entry) {
  const name = entry.replace(/\.ts$/, '').replaceAll('/', '-');
  const out = join(root, '.out', 'node', name);
  const file = join(out, `${basename(entry, '.ts')}.js`);
  const stamp = join(out, 'stamp');
  const sources = ['app', 'solver', 'package.json', ...(entry.startsWith('tests') ? ['tests'] : [])];
  const changed = Math.max(...sources.map((source) => newest(join(root, source))));
  if (existsSync(stamp) && existsSync(file) && statSync(stamp).mtimeMs > changed) return file;
  const { build } = await import('vite');
  await build({
    root,
    configFile: false,
    logLevel: 'warn',
    build: {
      ssr: join(root, entry),
      outDir: out,
      emptyOutDir: true,
      target: 'node20',
      sourcemap: true,
      rollupOptions: { output: { entryFileNames: '[name].js', format: 'es' } },
    },
  });
  mkdirSync(dirname(stamp), { recursive: true });
  writeFileSync(stamp, '');
  return file;
}

if (process.argv[1] && resolve(process.argv[1]) === fileURLToPath(import.meta.url)) {
  const [entry, ...rest] = process.argv.slice(2);
  const file = await buildNodeEntry(entry);
  process.argv = [process.argv[0], file, ...rest];
  await import(pathToFileURL(file).href);
}
