/** The desktop shell, built if need be and run. */
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { buildIfStale } from './fresh.ts';

/** Builds the shell if its sources have changed. @returns the built main process */
export async function buildDesktop(root: string): Promise<string> {
  const out = join(root, '.out', 'desktop');
  const sources = ['app', 'solver', 'renderer', '.config', 'electron.config.ts', 'package.json'];
  await buildIfStale(
    out,
    sources.map((name) => join(root, name)),
    async () => {
      const { build } = await import('electron-vite');
      await build({ root, configFile: join(root, 'electron.config.ts'), logLevel: 'warn' });
    },
  );
  return join(out, 'main', 'main.js');
}

/**
 * Builds the shell and runs it until its window is closed.
 *
 * @param binary of Electron
 * @returns its exit code
 */
export async function startDesktop(root: string, binary: string, args: readonly string[]): Promise<number> {
  const shell = spawn(binary, [await buildDesktop(root), ...args], { cwd: root, stdio: 'inherit' });
  return new Promise((resolve, reject) => {
    shell.once('error', reject);
    shell.once('exit', (code) => resolve(code ?? 1));
  });
}
