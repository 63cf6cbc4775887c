/** The desktop shell's main process: a thin window on the same renderer and the same host as the web. */
import { app, BrowserWindow, ipcMain, Menu, protocol } from 'electron';
import { fileURLToPath } from 'node:url';
import { dataFolder } from '../documents/data-folder.ts';
import { createLibrary } from '../documents/library.ts';
import { demoSource, folderSource } from '../documents/sources.ts';
import { createHost } from '../host/create-host.ts';
import { createSolverClient } from '../solving/solver-client.ts';
import { openStaticFiles } from '../web/static-files.ts';
import { runShell } from './shell.ts';
import { windowOptions } from './window.ts';

const beside = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const asked = process.argv.find((argument) => argument.startsWith('--data='))?.slice('--data='.length);

Menu.setApplicationMenu(null);
await runShell({
  app,
  protocol,
  ipc: ipcMain,
  makeWindow: () => new BrowserWindow(windowOptions(beside('../preload/preload.cjs'))),
  files: () => openStaticFiles(beside('../renderer')),
  host: () => {
    const folder = dataFolder(asked);
    const solver = createSolverClient({ worker: new URL('./worker.js', import.meta.url) });
    const library = createLibrary([folderSource(folder), demoSource]);
    return { host: createHost({ library, folder, solver }), close: solver.close };
  },
});
