/** Whether there is a screen to open a window or a browser on. */
export interface ScreenSigns {
  readonly platform: NodeJS.Platform;
  readonly env: Readonly<Record<string, string | undefined>>;
}

const set = (value: string | undefined): boolean =>
  value !== undefined && value !== '' && value !== '0' && value !== 'false';

/** A screen: not on a build server, and on Linux only where a display is named. */
export function hasScreen({ platform, env }: ScreenSigns): boolean {
  if (set(env['CI'])) return false;
  if (platform === 'win32' || platform === 'darwin') return true;
  return set(env['DISPLAY']) || set(env['WAYLAND_DISPLAY']);
}

/** Whether a browser may be opened: on a screen, or the one that `BROWSER` names; `BROWSER=none` forbids it. */
export function mayOpenBrowser(signs: ScreenSigns): boolean {
  const { env } = signs;
  if (set(env['CI']) || env['BROWSER'] === 'none') return false;
  return hasScreen(signs) || set(env['BROWSER']);
}
