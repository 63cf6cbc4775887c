/**
 * A stand-in for electron: as much of its API as the shell uses, typed by electron's own declarations, noting what was asked of
 * it and letting the test raise its events.
 */
import { EventEmitter } from 'node:events';
import type {
  App,
  BrowserWindow,
  IpcMain,
  IpcMainEvent,
  IpcMainInvokeEvent,
  IpcRenderer,
  Protocol,
  WebContents,
} from 'electron';

type Handler = (event: IpcMainInvokeEvent, ...args: unknown[]) => unknown;

/** A page's frame, by its address; `parent` null: the top frame. */
export interface Frame {
  readonly url: string;
  readonly parent: Frame | null;
}

export class StandInContents extends EventEmitter {
  readonly id: number;
  readonly sent: { readonly channel: string; readonly message: unknown }[] = [];
  destroyed = false;
  openHandler: ((details: { readonly url: string }) => { readonly action: string }) | null = null;
  readonly session = {
    request: null as ((contents: unknown, permission: string, answer: (granted: boolean) => void) => void) | null,
    check: null as (() => boolean) | null,
    device: null as (() => boolean) | null,
    setPermissionRequestHandler: (handler: never): void => void (this.session.request = handler),
    setPermissionCheckHandler: (handler: never): void => void (this.session.check = handler),
    setDevicePermissionHandler: (handler: never): void => void (this.session.device = handler),
  };

  constructor(id = 1) {
    super();
    this.id = id;
  }
  isDestroyed(): boolean {
    return this.destroyed;
  }
  send(channel: string, message: unknown): void {
    this.sent.push({ channel, message });
  }
  setWindowOpenHandler(handler: typeof this.openHandler): void {
    this.openHandler = handler;
  }
  /** Raises an event that can be prevented. @returns whether it was */
  prevents(name: string): boolean {
    let prevented = false;
    this.emit(name, { preventDefault: () => (prevented = true) });
    return prevented;
  }
}
export const asContents = (contents: StandInContents): WebContents => contents as unknown as WebContents;

export class StandInWindow extends EventEmitter {
  readonly webContents = new StandInContents();
  readonly did: string[] = [];
  minimized = false;
  loadURL(url: string): Promise<void> {
    this.did.push(`load ${url}`);
    return Promise.resolve();
  }
  show(): void {
    this.did.push('show');
  }
  focus(): void {
    this.did.push('focus');
  }
  restore(): void {
    this.did.push('restore');
  }
  isMinimized(): boolean {
    return this.minimized;
  }
}
export const asWindow = (window: StandInWindow): BrowserWindow => window as unknown as BrowserWindow;

export class StandInApp extends EventEmitter {
  readonly did: string[] = [];
  constructor(readonly first = true) {
    super();
  }
  requestSingleInstanceLock(): boolean {
    this.did.push('lock');
    return this.first;
  }
  enableSandbox(): void {
    this.did.push('sandbox');
  }
  quit(): void {
    this.did.push('quit');
  }
  whenReady(): Promise<void> {
    this.did.push('ready');
    return Promise.resolve();
  }
}
export const asApp = (app: StandInApp): App => app as unknown as App;

export class StandInProtocol {
  privileged: unknown = null;
  handler: ((request: Request) => Response | Promise<Response>) | null = null;
  registerSchemesAsPrivileged(schemes: unknown): void {
    this.privileged = schemes;
  }
  handle(_scheme: string, handler: (request: Request) => Response | Promise<Response>): void {
    this.handler = handler;
  }
}
export const asProtocol = (protocol: StandInProtocol): Protocol => protocol as unknown as Protocol;

/** Both ends of the channels between a page and the main process. */
export class StandInIpc extends EventEmitter {
  readonly handlers = new Map<string, Handler>();
  readonly page = new EventEmitter();

  constructor(
    readonly frame: Frame | null,
    readonly contents = new StandInContents(),
  ) {
    super();
    contents.send = (channel, message) => void this.page.emit(channel, {}, structuredClone(message));
  }
  private get event(): IpcMainEvent {
    return { senderFrame: this.frame, sender: this.contents } as unknown as IpcMainEvent;
  }
  handle(channel: string, handler: Handler): void {
    this.handlers.set(channel, handler);
  }
  /** The page asks. */
  async invoke(channel: string, ...args: unknown[]): Promise<unknown> {
    return structuredClone(await this.handlers.get(channel)!(this.event as unknown as IpcMainInvokeEvent, ...args));
  }
  /** The page tells. */
  send(channel: string, ...args: unknown[]): void {
    this.emit(channel, this.event, ...args);
  }
}
export const asIpcMain = (ipc: StandInIpc): IpcMain => ipc as unknown as IpcMain;
export const asIpcRenderer = (ipc: StandInIpc): IpcRenderer =>
  ({
    invoke: ipc.invoke.bind(ipc),
    send: ipc.send.bind(ipc),
    on: ipc.page.on.bind(ipc.page),
  }) as unknown as IpcRenderer;
