/**
 * `npm start` and `npm run desktop`: the desktop shell where Electron's binary is there, else the web host with the system's
 * browser, else the web host and its address.
 */
import { parseArgs } from 'node:util';
import { dataFolder } from './documents/data-folder.ts';
import { createLibrary } from './documents/library.ts';
import { demoSource, folderSource } from './documents/sources.ts';
import { createHost } from './host/create-host.ts';
import { createSolverClient } from './solving/solver-client.ts';
import { buildRenderer } from './start/build-renderer.ts';
import { electronBinary, fetchElectron } from './start/electron-binary.ts';
import { projectRoot } from './start/project-root.ts';
import { hasScreen, mayOpenBrowser } from './start/screen.ts';
import { startDesktop } from './start/start-desktop.ts';
import { startWeb } from './start/start-web.ts';

const HELP = `Usage: npm start -- [options]

  --data DIR   data folder (AFTERHEAT_DATA, or the usual place of this system)
  --port N     port of the web host (any that is free)
  --web        the browser, even where the desktop shell could be used
  --no-open    print the address and open nothing
  --desktop    the desktop shell; fetches Electron first where it is missing (npm run desktop)
`;

const { values } = parseArgs({
  options: {
    data: { type: 'string' },
    port: { type: 'string', default: '0' },
    web: { type: 'boolean', default: false },
    'no-open': { type: 'boolean', default: false },
    desktop: { type: 'boolean', default: false },
    help: { type: 'boolean', default: false },
  },
});

const say = (line: string): void => console.log(line);
const root = projectRoot();
const folder = dataFolder(values.data);

async function desktop(binary: string): Promise<void> {
  process.exitCode = await startDesktop(root, binary, [`--data=${folder}`]);
}

async function web(): Promise<void> {
  const pages = await buildRenderer(root);
  const solver = createSolverClient({ worker: new URL('./worker.js', import.meta.url) });
  const library = createLibrary([folderSource(folder), demoSource]);
  const mayOpen = !values['no-open'] && mayOpenBrowser(process);
  const close = await startWeb({
    host: createHost({ library, folder, solver }),
    pages,
    port: Number(values.port),
    ...(mayOpen ? { open: async (address: string) => (await import('open')).default(address) } : {}),
    say,
  });
  const end = (): void => {
    void Promise.all([close(), solver.close()]).then(() => process.exit(0));
  };
  process.once('SIGINT', end);
  process.once('SIGTERM', end);
}

async function main(): Promise<void> {
  if (values.help) return say(HELP);
  const there = electronBinary(root);
  if (values.desktop) {
    if (there === null && !fetchElectron(root)) {
      console.error('Electron could not be fetched. `npm start` works without it, in the browser.');
      process.exitCode = 1;
      return;
    }
    return desktop(electronBinary(root)!);
  }
  if (there !== null && !values.web && !values['no-open'] && hasScreen(process)) return desktop(there);
  return web();
}

await main();
