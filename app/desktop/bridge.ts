/**
 * What the preload script puts into the desktop window's page, and how it speaks to the main process. Types and constants only.
 *
 * The page finds the whole `Host` as `window.afterheat`, carried over the context bridge; a page without it is in a browser and
 * uses the web host.
 */
import type { HelpProgress, HelpResult, Host, PlanProgress, PlanResult } from '../api.ts';

/** Name of the `Host` on the page's `window`. */
export const BRIDGE_NAME = 'afterheat';

export interface BridgedWindow {
  readonly [BRIDGE_NAME]?: Host;
}

/** The calls that ask once and are answered once. */
export const CALLS = [
  'list',
  'session',
  'kitchen',
  'plan',
  'savePlan',
  'saveKitchen',
  'kitchenFigures',
  'planFigures',
] as const satisfies readonly (keyof Host)[];
export type Call = (typeof CALLS)[number];

/** Names of the channels between the window and the main process. */
export const CHANNEL = {
  /** invoke: `{ call, args }` → the answer. */
  call: 'afterheat:call',
  /** send: `{ job, ask, request }`, the job's number chosen by the page, `ask` `'plan'` or `'help'`. */
  start: 'afterheat:start',
  /** send: `{ job }`. */
  stop: 'afterheat:stop',
  /** received: `JobMessage`. */
  job: 'afterheat:job',
} as const;

export type JobMessage =
  | { readonly kind: 'progress'; readonly job: number; readonly progress: PlanProgress | HelpProgress }
  | { readonly kind: 'done'; readonly job: number; readonly result: PlanResult | HelpResult };
