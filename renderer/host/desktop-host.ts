/** The host in the desktop window: what the preload script put there. */
import type { Host } from '../../app/api.ts';
import { BRIDGE_NAME, type BridgedWindow } from '../../app/desktop/bridge.ts';

/** Null where this is no desktop window. */
export function desktopHost(window: object): Host | null {
  return (window as BridgedWindow)[BRIDGE_NAME] ?? null;
}
