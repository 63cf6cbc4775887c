/** The one window: sandboxed, isolated, going nowhere, allowed nothing. */
import type { BrowserWindow, BrowserWindowConstructorOptions, Session, WebContents } from 'electron';

/** Address of the page in the shell, served by `pages.ts`. */
export const PAGE_ORIGIN = 'app://afterheat';

/** What the window is made with. */
export function windowOptions(preload: string): BrowserWindowConstructorOptions {
  return {
    width: 1360,
    height: 860,
    minWidth: 320,
    minHeight: 400,
    title: 'Afterheat',
    show: false,
    autoHideMenuBar: true,
    webPreferences: {
      preload,
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webviewTag: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      navigateOnDragDrop: false,
      spellcheck: false,
    },
  };
}

/** Refuses navigation, new windows and embedded views to a page. */
export function confine(contents: WebContents): void {
  contents.on('will-navigate', (event) => event.preventDefault());
  contents.on('will-redirect', (event) => event.preventDefault());
  contents.on('will-frame-navigate', (event) => event.preventDefault());
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
}

/** Denies every permission a page may ask for, and every device. */
export function denyPermissions(session: Session): void {
  session.setPermissionRequestHandler((_contents, _permission, answer) => answer(false));
  session.setPermissionCheckHandler(() => false);
  session.setDevicePermissionHandler(() => false);
}

/** Opens the page in a window and shows it once it is drawn. */
export async function openPage(window: BrowserWindow): Promise<void> {
  confine(window.webContents);
  denyPermissions(window.webContents.session);
  window.once('ready-to-show', () => window.show());
  await window.loadURL(`${PAGE_ORIGIN}/index.html`);
}
