import { mkdir, utimes, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import { electronBinary } from '../../../app/start/electron-binary.ts';
import { buildIfStale } from '../../../app/start/fresh.ts';
import { hasScreen, mayOpenBrowser } from '../../../app/start/screen.ts';
import { startWeb } from '../../../app/start/start-web.ts';
import { emptyFolder } from '../../support/folder.ts';
import { standInHost } from '../../support/stand-in-host.ts';

describe('Electron’s binary', () => {
  async function root(files: readonly string[], note?: string): Promise<string> {
    const folder = await emptyFolder();
    const electron = join(folder, 'node_modules', 'electron');
    await mkdir(join(electron, 'dist'), { recursive: true });
    for (const file of files) await writeFile(join(electron, file), '');
    if (note !== undefined) await writeFile(join(electron, 'path.txt'), note);
    return folder;
  }

  test('is found where its package notes it', async () => {
    const folder = await root(['dist/electron'], 'electron');
    expect(electronBinary(folder)).toBe(join(folder, 'node_modules/electron/dist/electron'));
  });

  test('is not there without the note, nor with the note alone, nor without the package', async () => {
    expect(electronBinary(await root(['dist/electron']))).toBeNull();
    expect(electronBinary(await root([], 'electron'))).toBeNull();
    expect(electronBinary(await emptyFolder())).toBeNull();
  });
});

describe('a screen', () => {
  test.each([
    { name: 'Linux with a display', platform: 'linux', env: { DISPLAY: ':0' }, screen: true, browser: true },
    {
      name: 'Linux with Wayland',
      platform: 'linux',
      env: { WAYLAND_DISPLAY: 'wayland-0' },
      screen: true,
      browser: true,
    },
    { name: 'Linux without', platform: 'linux', env: {}, screen: false, browser: false },
    {
      name: 'Linux without, but a browser named',
      platform: 'linux',
      env: { BROWSER: 'w3m' },
      screen: false,
      browser: true,
    },
    { name: 'macOS', platform: 'darwin', env: {}, screen: true, browser: true },
    {
      name: 'macOS with no browser wanted',
      platform: 'darwin',
      env: { BROWSER: 'none' },
      screen: true,
      browser: false,
    },
    { name: 'a build server', platform: 'linux', env: { CI: 'true', DISPLAY: ':0' }, screen: false, browser: false },
  ] as const)('$name', ({ platform, env, screen, browser }) => {
    expect([hasScreen({ platform, env }), mayOpenBrowser({ platform, env })]).toEqual([screen, browser]);
  });
});

describe('building on demand', () => {
  test('happens once, and again only after a source has changed', async () => {
    const folder = await emptyFolder();
    const source = join(folder, 'source.ts');
    const out = join(folder, 'out');
    await writeFile(source, '1');
    // A file system's clock is coarse: a source as young as the stamp counts as changed.
    const before = new Date(Date.now() - 5000);
    await utimes(source, before, before);
    let builds = 0;
    const build = () =>
      buildIfStale(out, [source, join(folder, 'none')], async () => {
        builds += 1;
        await mkdir(out, { recursive: true });
      });
    await build();
    await build();
    expect(builds).toBe(1);
    const later = new Date(Date.now() + 5000);
    await utimes(source, later, later);
    await build();
    expect(builds).toBe(2);
  });
});

describe('the start in a browser', () => {
  async function started(open?: (address: string) => Promise<unknown>) {
    const pages = await emptyFolder();
    await writeFile(join(pages, 'index.html'), '<!doctype html><title>Afterheat</title>');
    const said: string[] = [];
    const close = await startWeb({
      host: standInHost(),
      pages,
      port: 0,
      say: (line) => said.push(line),
      ...(open === undefined ? {} : { open }),
    });
    onTestFinished(close);
    const address = said.map((line) => line.trim()).find((line) => line.startsWith('http://'))!;
    return { said, address };
  }

  test('opens the address that pairs', async () => {
    const opened: string[] = [];
    const { address } = await started((where) => Promise.resolve(opened.push(where)));
    expect(opened).toEqual([address]);
    expect(address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/#code=[\w-]{22}$/);
  });

  test('prints the address and keeps serving where there is no browser, or it does not open', async () => {
    for (const open of [undefined, () => Promise.reject(new Error('no browser'))]) {
      const { said, address } = await started(open);
      expect(said[0]).toBe('Open this address in a browser (it works once):');
      expect(await (await fetch(address)).text()).toContain('<title>Afterheat</title>');
    }
  });
});
