/** Drafts that are not saved yet, kept by the window where it may keep things, so that closing or reloading it loses nothing. */
import type { Kitchen } from '../../solver/kitchen/kitchen.ts';
import type { Keeper } from './settings.svelte.ts';

const KEY = 'afterheat.kitchen-drafts';

/** A kitchen as it was read or last saved, and as it stands now, sound or not. */
export interface KeptDraft {
  readonly saved: Kitchen;
  readonly now: unknown;
}

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const isDraft = (value: unknown, id: string): value is KeptDraft =>
  isObject(value) && isObject(value['saved']) && isObject(value['now']) && value['now']['id'] === id;

/** By id of the kitchen; what cannot be read is left out. */
export function keptDrafts(keeper: Keeper | null): Readonly<Record<string, KeptDraft>> {
  try {
    const kept: unknown = JSON.parse(keeper?.getItem(KEY) ?? '{}');
    return isObject(kept)
      ? Object.fromEntries(
          Object.entries(kept).filter((each): each is [string, KeptDraft] => isDraft(each[1], each[0])),
        )
      : {};
  } catch {
    return {};
  }
}

/** Where there is no room, or nothing may be kept, the drafts live as long as the window. */
export function keepDrafts(keeper: Keeper | null, drafts: Readonly<Record<string, KeptDraft>>): void {
  try {
    keeper?.setItem(KEY, JSON.stringify(drafts));
  } catch {
    // A full store is no reason to stop editing.
  }
}
