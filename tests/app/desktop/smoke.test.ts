/** The real shell, where Electron's binary and a screen are there. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { _electron as electron } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { electronBinary } from '../../../app/start/electron-binary.ts';
import { buildDesktop } from '../../../app/start/start-desktop.ts';
import { projectRoot } from '../../../app/start/project-root.ts';
import { hasScreen } from '../../../app/start/screen.ts';
import { emptyFolder } from '../../support/folder.ts';

const root = projectRoot(import.meta.url);
const binary = electronBinary(root);
const display = hasScreen({ platform: process.platform, env: { ...process.env, CI: undefined } });

// Electron's binary is not fetched by the install, and a bare machine has no display.
describe.skipIf(binary === null || !display || !existsSync(join(root, 'renderer', 'index.html')))(
  'the real shell',
  () => {
    test('opens our page with the host, and without Node', async () => {
      const main = await buildDesktop(root);
      const shell = await electron.launch({ executablePath: binary!, args: [main, `--data=${await emptyFolder()}`] });
      try {
        const page = await shell.firstWindow();
        expect(page.url()).toBe('app://afterheat/index.html');
        expect(await page.evaluate('[typeof window.afterheat, typeof require, typeof process]')).toEqual([
          'object',
          'undefined',
          'undefined',
        ]);
        expect(await page.evaluate('window.afterheat.list().then((entries) => entries.length > 0)')).toBe(true);
      } finally {
        await shell.close();
      }
    });
  },
);
