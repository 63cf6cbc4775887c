/** Runs before the page, in a world of its own: gives the page the `Host`, and nothing else. */
import { contextBridge, ipcRenderer } from 'electron';
import { BRIDGE_NAME } from './bridge.ts';
import { bridgedHost } from './bridged-host.ts';

contextBridge.exposeInMainWorld(BRIDGE_NAME, bridgedHost(ipcRenderer));
