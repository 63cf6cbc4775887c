/** The desktop build: the main process, the preload script (CommonJS, since the window is sandboxed), and the renderer. */
import { defineConfig } from 'electron-vite';
import { fileURLToPath } from 'node:url';
import { rendererConfig } from './.config/renderer.ts';

const root = fileURLToPath(new URL('.', import.meta.url)).replace(/[\\/]$/, '');
const out = (part: string): string => `${root}/.out/desktop/${part}`;
const page = rendererConfig(root, out('renderer'));

export default defineConfig({
  main: {
    build: {
      outDir: out('main'),
      rollupOptions: {
        input: { main: `${root}/app/desktop/main.ts`, worker: `${root}/app/solving/worker.ts` },
        output: { format: 'es', entryFileNames: '[name].js' },
      },
    },
  },
  preload: {
    build: {
      outDir: out('preload'),
      externalizeDeps: false,
      rollupOptions: {
        input: { preload: `${root}/app/desktop/preload.ts` },
        output: { format: 'cjs', entryFileNames: '[name].cjs' },
      },
    },
  },
  renderer: {
    root: page.root!,
    base: './',
    plugins: page.plugins!,
    build: { ...page.build, rollupOptions: { ...page.build?.rollupOptions, input: `${root}/renderer/index.html` } },
  },
});
