/** The shell's life: one instance, one window, its page, its end. Electron is handed in, so that it can be run without. */
import type { App, BrowserWindow, IpcMain, Protocol } from 'electron';
import type { Host } from '../api.ts';
import type { StaticFiles } from '../web/static-files.ts';
import { serveHost } from './ipc.ts';
import { registerScheme, servePages } from './pages.ts';
import { confine, openPage } from './window.ts';

export interface Shell {
  readonly app: Pick<App, 'requestSingleInstanceLock' | 'quit' | 'whenReady' | 'on' | 'enableSandbox'>;
  readonly protocol: Pick<Protocol, 'registerSchemesAsPrivileged' | 'handle'>;
  readonly ipc: Pick<IpcMain, 'handle' | 'on'>;
  readonly makeWindow: () => BrowserWindow;
  readonly files: () => Promise<StaticFiles>;
  readonly host: () => { readonly host: Host; readonly close: () => Promise<void> };
}

/** Runs the shell. A second instance shows the first one's window and ends. */
export async function runShell({ app, protocol, ipc, makeWindow, files, host }: Shell): Promise<void> {
  if (!app.requestSingleInstanceLock()) return app.quit();
  app.enableSandbox();
  registerScheme(protocol);
  let window: BrowserWindow | null = null;
  app.on('second-instance', () => {
    if (window === null) return;
    if (window.isMinimized()) window.restore();
    window.focus();
  });
  app.on('web-contents-created', (_event, contents) => confine(contents));
  await app.whenReady();
  const { host: served, close } = host();
  servePages(protocol, await files());
  serveHost(ipc, served);
  window = makeWindow();
  window.on('closed', () => {
    window = null;
  });
  app.on('window-all-closed', () => {
    void close().finally(() => app.quit());
  });
  await openPage(window);
}
