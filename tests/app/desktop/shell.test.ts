/** The shell's life and its window, run on a stand-in for electron. */
import { describe, expect, test } from 'vitest';
import { runShell } from '../../../app/desktop/shell.ts';
import { servePages } from '../../../app/desktop/pages.ts';
import { confine, denyPermissions, windowOptions } from '../../../app/desktop/window.ts';
import type { StaticFiles } from '../../../app/web/static-files.ts';
import {
  StandInApp,
  StandInContents,
  StandInIpc,
  StandInProtocol,
  StandInWindow,
  asApp,
  asContents,
  asIpcMain,
  asProtocol,
  asWindow,
} from '../../support/electron-stand-in.ts';
import { standInHost } from '../../support/stand-in-host.ts';

const files: StaticFiles = (path) =>
  Promise.resolve(
    path === '/index.html'
      ? { body: new TextEncoder().encode('page'), type: 'text/html; charset=utf-8', lasting: false }
      : null,
  );

async function shell(app = new StandInApp()) {
  const window = new StandInWindow();
  const protocol = new StandInProtocol();
  const closed: string[] = [];
  await runShell({
    app: asApp(app),
    protocol: asProtocol(protocol),
    ipc: asIpcMain(new StandInIpc(null)),
    makeWindow: () => asWindow(window),
    files: () => Promise.resolve(files),
    host: () => ({ host: standInHost(), close: () => Promise.resolve(void closed.push('closed')) }),
  });
  return { app, window, protocol, closed };
}

describe('the window', () => {
  test('is isolated and sandboxed, with no Node in the page', () => {
    expect(windowOptions('/preload.cjs').webPreferences).toMatchObject({
      preload: '/preload.cjs',
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webviewTag: false,
      webSecurity: true,
    });
  });

  test.each(['will-navigate', 'will-frame-navigate', 'will-redirect', 'will-attach-webview'])('refuses %s', (name) => {
    const contents = new StandInContents();
    confine(asContents(contents));
    expect(contents.prevents(name)).toBe(true);
  });

  test('opens no other window', () => {
    const contents = new StandInContents();
    confine(asContents(contents));
    expect(contents.openHandler!({ url: 'https://example.com' })).toEqual({ action: 'deny' });
  });

  test('denies every permission and every device', () => {
    const contents = new StandInContents();
    denyPermissions(asContents(contents).session);
    const granted: boolean[] = [];
    for (const permission of ['media', 'geolocation', 'notifications', 'openExternal'])
      contents.session.request!(null, permission, (answer) => granted.push(answer));
    expect([granted, contents.session.check!(), contents.session.device!()]).toEqual([
      [false, false, false, false],
      false,
      false,
    ]);
  });
});

describe('the shell', () => {
  test('sandboxes, loads our page, and shows the window once it is drawn', async () => {
    const { app, window } = await shell();
    expect(app.did).toEqual(['lock', 'sandbox', 'ready']);
    expect(window.did).toEqual(['load app://afterheat/index.html']);
    window.emit('ready-to-show');
    expect(window.did.at(-1)).toBe('show');
  });

  test('confines whatever contents are made later', async () => {
    const { app } = await shell();
    const contents = new StandInContents(2);
    app.emit('web-contents-created', {}, contents);
    expect([contents.prevents('will-navigate'), contents.openHandler!({ url: 'x' }).action]).toEqual([true, 'deny']);
  });

  test('runs once: a second instance ends at once, and the first shows its window', async () => {
    const second = await shell(new StandInApp(false));
    expect([second.app.did, second.window.did]).toEqual([['lock', 'quit'], []]);
    const { app, window } = await shell();
    window.minimized = true;
    app.emit('second-instance');
    expect(window.did.slice(-2)).toEqual(['restore', 'focus']);
  });

  test('closes the solver and ends when its window is closed', async () => {
    const { app, window, closed } = await shell();
    window.emit('closed');
    app.emit('window-all-closed');
    await expect.poll(() => app.did.at(-1)).toBe('quit');
    expect(closed).toEqual(['closed']);
    app.emit('second-instance');
    expect(window.did).not.toContain('focus');
  });
});

describe('the pages of the shell', () => {
  const protocol = new StandInProtocol();
  servePages(asProtocol(protocol), files);
  const get = async (url: string, method = 'GET') => protocol.handler!(new Request(url, { method }));

  test('come with the security headers of the web', async () => {
    const response = await get('app://afterheat/index.html');
    expect([response.status, await response.text()]).toEqual([200, 'page']);
    expect(response.headers.get('content-security-policy')).toMatch(/^default-src 'none'; script-src 'self'/);
    expect(response.headers.get('x-content-type-options')).toBe('nosniff');
  });

  test.each([
    ['another file', 'app://afterheat/../../package.json', 'GET'],
    ['another host', 'app://elsewhere/index.html', 'GET'],
    ['another method', 'app://afterheat/index.html', 'POST'],
  ])('are not found for %s', async (_name, url, method) => {
    expect((await get(url, method)).status).toBe(404);
  });

  test('are of a scheme that is standard and secure', async () => {
    const { protocol: used } = await shell();
    expect(used.privileged).toEqual([
      { scheme: 'app', privileges: { standard: true, secure: true, supportFetchAPI: true } },
    ]);
  });
});
