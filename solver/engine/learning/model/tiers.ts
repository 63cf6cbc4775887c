/**
 * Objective tiers as variables that are at least the tier's value.
 *
 * Only that direction is modelled: "better than v" is the assumption ⟦tier ≤ v − 1⟧, and the true value is read from the plan. A tier of
 * kind `changes` has a variable only once it is asked for.
 */
import { Sum } from './sums.ts';
import type { ChangesTier, CostTier, LatestTier, Problem, WaitingTier } from '../../problem.ts';
import type { Conditions } from './conditions.ts';
import type { Core } from '../core.ts';
import type { Differences } from './differences.ts';
import type { Lengths } from './lengths.ts';
import type { Orders } from './orders.ts';
import type { Points } from './points.ts';
import { modelChanges } from './changes.ts';
import type { Idle } from './changes.ts';

/**
 * A tier is at most `least + Σ factor × variable`. A sum of wide range has two variables, coarse and fine, so that no variable has
 * thousands of values; without parts the tier is not modelled.
 */
export interface TierVariable {
  readonly parts: readonly { readonly x: number; readonly factor: number }[];
  /** No value is below this. */
  readonly least: number;
  /** Where the tier is a count: what it is made of. */
  readonly count?: Count;
}

/** A tier that is a count. */
export type CountedTier = TierVariable & Required<Pick<TierVariable, 'count'>>;

/** The sum of the summands, and `shift`, is at most the tier. */
export interface Count {
  readonly summands: readonly number[];
  readonly shift: number;
  /** Variables in no constraint yet, one for each time that two sums can be made one. */
  readonly spare: readonly number[];
}

/** Sums of a wider range than this are cut into a coarse and a fine part. */
const WIDEST = 512;

/** The factor of the coarse part for a range of values; 1 where one part will do. */
function coarseness(range: number): number {
  if (range <= WIDEST) return 1;
  let factor = 2;
  while (factor * factor < range) factor *= 2;
  return factor;
}

export class Tiers {
  readonly core: Core;
  readonly problem: Problem;
  readonly conditions: Conditions;
  readonly points: Points;
  readonly differences: Differences;
  readonly lengths: Lengths;
  readonly orders: Orders;

  constructor(
    core: Core,
    problem: Problem,
    conditions: Conditions,
    points: Points,
    differences: Differences,
    lengths: Lengths,
    orders: Orders,
  ) {
    this.core = core;
    this.problem = problem;
    this.conditions = conditions;
    this.points = points;
    this.differences = differences;
    this.lengths = lengths;
    this.orders = orders;
  }

  /** Every tier, those of kind `changes` without a variable. */
  all(): TierVariable[] {
    return this.problem.tiers.map((tier) => {
      switch (tier.kind) {
        case 'latest':
          return this.latest(tier);
        case 'waiting':
          return this.waiting(tier);
        case 'cost':
          return this.cost(tier);
        case 'changes':
          return { parts: [], least: this.leastChanges(tier) };
      }
    });
  }

  private latest(tier: LatestTier): TierVariable {
    const { core, points } = this;
    const x = core.trail.variable(0, largestLatest(tier, this.problem.horizon));
    for (const term of tier.terms) {
      const place = points.place(term.point);
      const plus = term.plus ?? 0;
      const guard = points.presence(term.point);
      if (guard === core.trail.alwaysFalse) continue;
      // x ≥ plus + point, or x ≥ plus − point: the mirror slot of the point.
      if (term.minus === true) core.arcs.add(2 * place.x + 1, 2 * x, plus - place.offset, guard);
      else core.arcs.add(2 * place.x, 2 * x, plus + place.offset, guard);
    }
    return { parts: [{ x, factor: 1 }], least: 0 };
  }

  private waiting(tier: WaitingTier): TierVariable {
    const { core, points, conditions } = this;
    const { horizon } = this.problem;
    const sum = new Sum();
    let most = 0;
    for (const term of tier.terms) {
      const from = points.place(term.from);
      const to = points.place(term.to);
      const longest = horizon - term.free;
      const guard = conditions.all([points.presence(term.from), points.presence(term.to)]);
      if (term.weight === 0 || longest <= 0 || guard === core.trail.alwaysFalse) continue;
      most += term.weight * longest;
      if (from.x === to.x) {
        const fixed = term.weight * Math.max(0, to.offset - from.offset - term.free);
        this.lengths.addTo(sum, this.lengths.scaled(guard, fixed), 1);
        continue;
      }
      const wait = core.trail.variable(0, longest);
      if (from.x === 0)
        this.differences.add({ x: to.x, offset: to.offset - term.free }, { x: wait, offset: 0 }, 0, guard);
      else {
        const over = new Sum().add(to.x, 1).add(from.x, -1).add(wait, -1);
        over.constant = to.offset - from.offset;
        over.atMost(core, term.free, guard);
      }
      sum.add(wait, term.weight);
    }
    return this.bounded(sum, 0, most);
  }

  private cost(tier: CostTier): TierVariable {
    void tier;
    const { core, points, lengths } = this;
    const { horizon, tasks } = this.problem;
    const sum = new Sum();
    let least = 0;
    let most = 0;
    tasks.forEach((task, t) => {
      const start = points.starts[t]!;
      const end = points.ends[t]!;
      task.modes.forEach((mode, m) => {
        const literal = points.inMode[t]![m]!;
        if (mode?.cost === undefined || literal === core.trail.alwaysFalse) return;
        const longest = Math.min(mode.longest, horizon);
        const { fixed, perMinute } = mode.cost;
        const ends = [fixed + perMinute * mode.shortest, fixed + perMinute * longest, 0];
        least += Math.min(...ends);
        most += Math.max(...ends);
        if (start.x === end.x) {
          lengths.addTo(sum, lengths.scaled(literal, fixed + perMinute * (end.offset - start.offset)), 1);
          return;
        }
        lengths.addTo(sum, lengths.scaled(literal, fixed), 1);
        if (perMinute === 0) return;
        if (literal === points.present[t]) {
          lengths.addTo(sum, lengths.of(t), perMinute);
          return;
        }
        // Minutes in this mode: at least the length while in it (at most it, and 0 outside, where minutes are a gain).
        const minutes = core.trail.variable(0, longest);
        const length = lengths.of(t);
        const excess = new Sum().add(minutes, -1);
        lengths.addTo(excess, length, 1);
        if (perMinute > 0) excess.atMost(core, 0, literal);
        else {
          excess.atLeast(core, 0, literal);
          core.clause(literal, core.trail.atMost(minutes, 0));
        }
        sum.add(minutes, perMinute);
      });
    });
    return this.bounded(sum, least, most);
  }

  /** Variables that together are at least the sum. */
  private bounded(sum: Sum, least: number, most: number): TierVariable {
    const { core } = this;
    const range = Math.max(0, most - least);
    const factor = coarseness(range);
    const parts = [{ x: core.trail.variable(0, Math.ceil(range / factor)), factor }];
    if (factor > 1) parts.push({ x: core.trail.variable(0, factor - 1), factor: 1 });
    for (const part of parts) sum.add(part.x, -part.factor);
    sum.atMost(core, least, core.trail.alwaysTrue);
    return { parts, least };
  }

  /**
   * A tier of kind `changes` with its variable, which takes many clauses.
   * @returns also what tasks with nothing between them cost in idle minutes; null where the tier cannot be modelled
   */
  changes(tier: ChangesTier): { readonly variable: TierVariable; readonly idle: readonly Idle[] } | null {
    const least = this.leastChanges(tier);
    const { core } = this;
    const modelled = modelChanges(tier, this);
    if (modelled === null) return null;
    const { summands, shift, most, idle } = modelled;
    const x = core.trail.variable(0, Math.max(0, most - least));
    const sum = new Sum().add(x, -1);
    for (const summand of summands) sum.add(summand, 1);
    sum.constant = shift;
    sum.atMost(core, least, core.trail.alwaysTrue);
    const spare = summands.slice(1).map(() => core.trail.variable(0, most + summands.length));
    return { variable: { parts: [{ x, factor: 1 }], least, count: { summands, shift, spare } }, idle };
  }

  /** One change fewer than there are groups: on each resource alone, and on all of them together. */
  private leastChanges(tier: ChangesTier): number {
    const { core, points, problem } = this;
    const surelyOn = (resources: readonly string[]): number => {
      const groups = new Set<string>();
      problem.tasks.forEach((task, t) => {
        if (points.present[t] !== core.trail.alwaysTrue) return;
        const onIt = task.modes.every(
          (mode) => mode === null || mode.uses.some((use) => resources.includes(use.resource)),
        );
        if (onIt) groups.add(task.group ?? '');
      });
      return groups.size;
    };
    const alone = tier.resources.reduce((sum, resource) => sum + Math.max(0, surelyOn([resource]) - 1), 0);
    return Math.max(alone, surelyOn(tier.resources) - new Set(tier.resources).size);
  }
}

/** Upper limit of a `latest` tier's value. */
export function largestLatest(tier: LatestTier, horizon: number): number {
  return Math.max(0, ...tier.terms.map((term) => (term.plus ?? 0) + (term.minus === true ? 0 : horizon)));
}

/** No tier variable and no time exceeds this in absolute value; what the trail's literals must hold. */
export function largestValue(problem: Problem): number {
  const { horizon } = problem;
  let largest = horizon;
  const sum = (range: number): void => {
    const factor = coarseness(range);
    largest = Math.max(largest, Math.ceil(range / factor), factor);
  };
  for (const tier of problem.tiers) {
    switch (tier.kind) {
      case 'latest':
        largest = Math.max(largest, largestLatest(tier, horizon));
        break;
      case 'waiting':
        largest = Math.max(largest, ...tier.terms.map((term) => horizon - term.free));
        sum(tier.terms.reduce((all, term) => all + term.weight * Math.max(0, horizon - term.free), 0));
        break;
      case 'cost': {
        let all = 0;
        for (const task of problem.tasks)
          for (const mode of task.modes)
            if (mode?.cost !== undefined)
              all += Math.abs(mode.cost.fixed) + Math.abs(mode.cost.perMinute) * Math.min(mode.longest, horizon);
        sum(all);
        break;
      }
      case 'changes':
        largest = Math.max(largest, tier.resources.length * problem.tasks.length);
        break;
    }
  }
  return largest;
}
