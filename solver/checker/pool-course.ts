/** A pool's water as the session and the plan's uses of it make it: its level at every minute, and which water serves which boil. */
import { onceFor } from '../kitchen/once.ts';
import type { Pan } from '../kitchen/kitchen.ts';
import type { PlannedStep, PoolCourse } from '../kitchen/plan.ts';
import type { Pool } from '../kitchen/session.ts';
import { calledUse, stepsOfUse, type Reading, type Use } from './reading.ts';

export interface PoolUse {
  readonly use: Use;
  readonly how: 'boil' | 'steam' | 'draw';
  readonly boil: number;
  readonly from: number;
  /** A draw takes the minute in which the ladle goes in. */
  readonly until: number;
  readonly ml: number;
  readonly label: string;
  readonly steps: readonly string[];
}

export interface PoolReading {
  readonly course: PoolCourse;
  readonly pool: Pool;
  /** undefined: the plan names a pan that the kitchen lacks. */
  readonly pan: Pan | undefined;
  readonly uses: readonly PoolUse[];
  /** Filling, changing, putting back on the heat and emptying, in order of time. */
  readonly work: readonly PlannedStep[];
  /** Number of the filling whose water a boil has, from 1. */
  readonly waterOf: (boil: number) => number;
  /** Level just before the draws of a minute, mL. */
  readonly levelBefore: (minute: number) => number;
}

function poolUses(reading: Reading, pool: string): readonly PoolUse[] {
  return reading.uses
    .flatMap((use): readonly PoolUse[] => {
      const { need, place } = use;
      if (need.use !== 'pool' || place.id !== pool) return [];
      const until = need.how === 'draw' ? place.from + 1 : place.until;
      const { boil = 1, from } = place;
      const ml = need.how === 'draw' ? (need.ml ?? 0) : 0;
      return [{ use, how: need.how, boil, from, until, ml, label: calledUse(use), steps: stepsOfUse(use, reading) }];
    })
    .sort((a, b) => a.from - b.from);
}

export const readPools = onceFor(poolsOf);

function poolsOf(reading: Reading): readonly PoolReading[] {
  const { plan } = reading;
  return plan.pools.flatMap((course): readonly PoolReading[] => {
    const pool = (plan.session.pools ?? []).find(({ id }) => id === course.pool);
    if (pool === undefined) return [];
    const uses = poolUses(reading, pool.id);
    const work = reading.water.filter(({ component }) => component === pool.id).sort((a, b) => a.start - b.start);
    const fillings = work.filter(({ step }) => step === 'fill' || step === 'change');
    const levelBefore = (minute: number): number => {
      const filled = fillings.filter(({ end }) => end <= minute).at(-1)?.end ?? -Infinity;
      const drawn = uses.filter(({ how, from }) => how === 'draw' && from >= filled && from < minute);
      return pool.waterMl - drawn.reduce((sum, { ml }) => sum + ml, 0);
    };
    const waterOf = (boil: number): number =>
      course.boils.filter((each) => each.boil <= boil && each.water !== 'again').length;
    const pan = plan.kitchen.pans.find(({ id }) => id === course.pan);
    return [{ course, pool, pan, uses, work, waterOf, levelBefore }];
  });
}
