/** What the chart shows, in minutes: groups of lanes with bars. Knows nothing of size, zoom or colour. */
import type { OvenProgramme, PoolCourse } from '../../../solver/kitchen/plan.ts';
import type { Owner } from './identity.ts';

/** A time within a bar in which a hand is on it. */
export interface HandsOn {
  readonly start: number;
  readonly end: number;
  /** A look or a turn on the way. */
  readonly check: boolean;
}

/** `on`: hands-on from end to end; `off`: goes by itself, apart from `hands`; `held`: kept for it, nothing happens. */
export type Look = 'on' | 'off' | 'held';

export interface Bar {
  /** Unique in the chart. */
  readonly id: string;
  readonly stepId: string;
  readonly owner: Owner;
  readonly look: Look;
  readonly start: number;
  readonly end: number;
  readonly hands: readonly HandsOn[];
  /** Labels, the fullest first; each shorter one still made of whole words. */
  readonly labels: readonly string[];
  /** Moments within it worth a tick: the water boils. */
  readonly ticks: readonly { readonly minute: number; readonly words: string }[];
  /** The last minute at which it may end. */
  readonly limit: number | null;
  /** Sub-row within its lane, from 0. */
  readonly row: number;
  /** All of it in a sentence. */
  readonly words: string;
}

export interface Draw {
  readonly minute: number;
  readonly ml: number;
  readonly stepId: string;
  readonly owner: Owner;
  readonly words: string;
}

export interface Keeping {
  readonly id: string;
  readonly stepId: string;
  readonly owner: Owner;
  /** It leaves the heat, must be in the fridge, and is there; null where no step of this plan puts it there. */
  readonly from: number;
  readonly until: number;
  readonly away: number | null;
  readonly words: string;
}

interface LaneBase {
  readonly id: string;
  readonly name: string;
  readonly bars: readonly Bar[];
  readonly rows: number;
}

/** Times at which nobody or nothing is there. */
export interface Gone {
  readonly from: number;
  readonly until: number;
  readonly words: string;
}

export type Lane =
  | (LaneBase & { readonly kind: 'hands'; readonly gone: readonly Gone[] })
  | (LaneBase & { readonly kind: 'things'; readonly gone: readonly Gone[] })
  | (LaneBase & {
      readonly kind: 'water';
      readonly course: PoolCourse;
      readonly fullMl: number;
      readonly leastMl: number;
      readonly draws: readonly Draw[];
      /** Bars in these rows steam over the water, the others boil in it. */
      readonly steamRows: number;
    })
  | (LaneBase & { readonly kind: 'keeping'; readonly keeping: readonly Keeping[] });

export interface Hill {
  readonly programme: OvenProgramme;
  readonly roomC: number;
  readonly mostC: number;
}

export type GroupKind = 'hands' | 'oven' | 'hob' | 'heat' | 'water' | 'shelves' | 'keeping' | 'things';

export interface Group {
  readonly id: string;
  readonly kind: GroupKind;
  readonly name: string;
  readonly lanes: readonly Lane[];
  readonly hill: Hill | null;
}

/**
 * Puts bars that overlap into sub-rows: each takes the first row that is free at its start.
 * @returns the bars with their rows, by start, and how many rows there are, at least 1
 */
export function inRows<B extends { readonly start: number; readonly end: number }>(
  bars: readonly B[],
): { readonly bars: readonly (B & { readonly row: number })[]; readonly rows: number } {
  const free: number[] = [];
  const placed = [...bars]
    .sort((a, b) => a.start - b.start || b.end - a.end)
    .map((bar) => {
      const found = free.findIndex((minute) => minute <= bar.start);
      const row = found === -1 ? free.length : found;
      free[row] = Math.max(bar.end, bar.start + 1);
      return { ...bar, row };
    });
  return { bars: placed, rows: Math.max(1, free.length) };
}
