/** The renderer built for the browser, if its sources have changed. */
import { join } from 'node:path';
import { rendererConfig } from '../../.config/renderer.ts';
import { buildIfStale } from './fresh.ts';

/** @returns the folder of the built files */
export async function buildRenderer(root: string): Promise<string> {
  const out = join(root, '.out', 'renderer');
  const sources = ['renderer', 'solver', 'app', '.config', 'package.json'].map((name) => join(root, name));
  await buildIfStale(out, sources, async () => {
    const { build } = await import('vite');
    await build(rendererConfig(root, out));
  });
  return out;
}
