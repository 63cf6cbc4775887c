/** The folder that the user's documents are in. */
import { homedir } from 'node:os';
import { join, resolve } from 'node:path';

export interface Surroundings {
  readonly platform: NodeJS.Platform;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly home: string;
}

const here = (): Surroundings => ({ platform: process.platform, env: process.env, home: homedir() });

/**
 * The data folder: as asked for, else `AFTERHEAT_DATA`, else where the operating system keeps such data (the XDG Base Directory
 * Specification on Linux).
 *
 * @param asked a path from the command line
 */
export function dataFolder(asked?: string, { platform, env, home }: Surroundings = here()): string {
  const given = asked ?? env['AFTERHEAT_DATA'];
  if (given !== undefined && given !== '') return resolve(given);
  if (platform === 'win32') return join(env['APPDATA'] || join(home, 'AppData', 'Roaming'), 'Afterheat');
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'Afterheat');
  const xdg = env['XDG_DATA_HOME'];
  return join(xdg !== undefined && xdg.startsWith('/') ? xdg : join(home, '.local', 'share'), 'afterheat');
}
