/** How the renderer is built, once for the browser and once within the desktop build. */
import { svelte } from '@sveltejs/vite-plugin-svelte';
import type { InlineConfig } from 'vite';

/**
 * Vite's configuration of the renderer.
 *
 * @param root the project's folder
 * @param outDir folder of the built files
 */
export function rendererConfig(root: string, outDir: string): InlineConfig {
  return {
    root: `${root}/renderer`,
    configFile: false,
    base: './',
    logLevel: 'warn',
    plugins: [svelte({ configFile: false })],
    build: {
      outDir,
      emptyOutDir: true,
      target: 'es2023',
      // The page's security policy lets no data: address be a script or a style, and fonts come as files.
      assetsInlineLimit: 0,
      modulePreload: { polyfill: false },
      rollupOptions: { checks: { bundlerTimings: false } },
    },
  };
}
