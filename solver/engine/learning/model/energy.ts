/**
 * What a finish owes to the work itself: all work that must end by it, times what it uses, fits under the capacity until then.
 *
 * For a `latest` tier and a resource, Σ amount × shortest × ⟦task in that mode⟧ ≤ capacity × tier, over the tasks whose ends the tier counts. Work
 * whose mode or presence is open counts as soon as it is decided, which no time-table sees; sets of resources that tasks choose among
 * are taken together, so that who does the work need not be known. Where stocks are drawn from, a second inequality counts what is drawn, too, see
 * `budgets.ts`.
 */
import { SCALE, stocksOf, weightsOf } from './budgets.ts';
import { Sum } from './sums.ts';
import type { LatestTier, Problem } from '../../problem.ts';
import type { Core } from '../core.ts';
import type { Differences } from './differences.ts';
import type { Idle } from './changes.ts';
import type { Lengths } from './lengths.ts';
import type { Points } from './points.ts';
import type { TierVariable } from './tiers.ts';

interface Context {
  readonly problem: Problem;
  readonly core: Core;
  readonly points: Points;
  readonly differences: Differences;
  readonly lengths: Lengths;
  readonly tiers: readonly TierVariable[];
  /** Resources, alone and together, that are worth looking at. */
  readonly sets: readonly ReadonlySet<string>[];
}

/** A `latest` tier, and by task how much later than its end the tier is at least; negative where nothing is known. */
interface Goal {
  readonly x: number;
  readonly tails: readonly number[];
}

/** The work of a set of resources that a tier must wait for. */
interface Work {
  readonly capacity: number;
  /** No work lies outside of the tier's minutes less these. */
  readonly margin: number;
  /** By task and mode: what it takes; null for no mode. */
  readonly energies: readonly (readonly (number | null)[])[];
}

/** Posts the inequalities of work, and of work and stocks, for every `latest` tier and set. */
export function addEnergy(context: Context): void {
  const { problem, core, points, lengths, sets } = context;
  const stocks = stocksOf(problem);
  const always = alwaysThere(context);
  for (const goal of goalsOf(context))
    for (const set of sets) {
      const work = workOn(set, goal, always, context);
      if (work === null) continue;
      const { capacity, margin, energies } = work;
      totalOf(energies, points, lengths)
        .add(goal.x, -capacity)
        .atMost(core, -capacity * margin, core.trail.alwaysTrue);
      const weights = stocks.length === 0 ? null : weightsOf(stocks, energies, always);
      if (weights === null) continue;
      const costs = energies.map((row, t) =>
        row.map((energy, m) =>
          energy === null
            ? 0
            : stocks.reduce((cost, stock, s) => cost + weights[s]! * stock.drawn[t]![m]!, SCALE * energy),
        ),
      );
      const room = stocks.reduce((worth, { amount }, s) => worth + weights[s]! * amount, 0);
      totalOf(costs, points, lengths)
        .add(goal.x, -SCALE * capacity)
        .atMost(core, room - SCALE * capacity * margin, core.trail.alwaysTrue);
    }
}

/**
 * Posts the inequality of work with idle minutes.
 *
 * @param idle minutes of an exclusive resource between two of its tasks, when nothing comes between them
 */
export function addIdleEnergy(context: Context, idle: readonly Idle[]): void {
  const { core, points, lengths, sets } = context;
  const always = alwaysThere(context);
  for (const goal of goalsOf(context))
    for (const set of sets) {
      const here = idle.filter(
        ({ resource, first, second }) => set.has(resource) && goal.tails[first]! >= 0 && goal.tails[second]! >= 0,
      );
      const work = here.length === 0 ? null : workOn(set, goal, always, context);
      if (work === null) continue;
      const sum = totalOf(work.energies, points, lengths);
      for (const { gap, literal } of here) lengths.addTo(sum, lengths.scaled(literal, gap), 1);
      sum.add(goal.x, -work.capacity).atMost(core, -work.capacity * work.margin, core.trail.alwaysTrue);
    }
}

function alwaysThere({ problem, core, points }: Context): boolean[] {
  return problem.tasks.map((_, t) => points.present[t] === core.trail.alwaysTrue);
}

function goalsOf(context: Context): Goal[] {
  const { problem, tiers } = context;
  return problem.tiers.flatMap((tier, k) => {
    const part = tiers[k]!.parts[0];
    return tier.kind === 'latest' && part !== undefined ? [{ x: part.x, tails: tailsTo(tier, context) }] : [];
  });
}

/** The work on a set of resources that a goal waits for; null where it is that of fewer than two tasks. */
function workOn(
  set: ReadonlySet<string>,
  { tails }: Goal,
  always: readonly boolean[],
  { problem, core, points }: Context,
): Work | null {
  const { horizon } = problem;
  const capacity = problem.resources.reduce(
    (sum, { id, capacity: usual, calendar = [] }) =>
      set.has(id) ? sum + Math.max(usual, ...calendar.map((entry) => entry.capacity)) : sum,
    0,
  );
  let users = 0;
  let sure = false;
  let head = horizon;
  let tail = horizon;
  const energies = problem.tasks.map((task, t) => {
    const nothing = task.modes.map((mode) => (mode === null ? null : 0));
    if (tails[t]! < 0) return nothing;
    const taken = task.modes.map((mode) => {
      if (mode === null) return null;
      const amount = mode.uses.reduce((sum, use) => (set.has(use.resource) ? sum + use.amount : sum), 0);
      return amount * Math.min(mode.shortest, horizon);
    });
    if (taken.every((energy) => energy === null || energy === 0)) return nothing;
    users++;
    if (always[t]!) sure = true;
    const start = points.starts[t]!;
    head = Math.min(head, core.trail.declaredLower(start.x) + start.offset);
    tail = Math.min(tail, tails[t]!);
    return taken;
  });
  // All of it lies between the least head and the tier less the least tail, once one of the tasks is surely there.
  return users < 2 || capacity === 0 ? null : { capacity, margin: sure ? head + tail : 0, energies };
}

function totalOf(energies: readonly (readonly (number | null)[])[], points: Points, lengths: Lengths): Sum {
  const sum = new Sum();
  energies.forEach((row, t) => {
    addLeast(
      sum,
      points,
      lengths,
      t,
      row.map((energy) => energy ?? 0),
    );
  });
  return sum;
}

/** By task: the tier is at least its end plus this, in every solution. */
function tailsTo(tier: LatestTier, { problem, core, points, differences }: Context): number[] {
  const tails = problem.tasks.map(() => -1);
  for (const term of tier.terms) {
    if (term.minus === true) continue;
    const plus = term.plus ?? 0;
    const own = points.taskIndex.get(term.point.task)!;
    if (term.point.at === 'end') tails[own] = Math.max(tails[own]!, plus);
    if (points.presence(term.point) !== core.trail.alwaysTrue) continue;
    problem.tasks.forEach((_, t) => {
      tails[t] = Math.max(tails[t]!, plus + differences.longest(points.ends[t]!, points.place(term.point)));
    });
  }
  return tails;
}

/** The task's energy as layers: a level more under the literal of the modes that need at least as much. */
export function addLeast(sum: Sum, points: Points, lengths: Lengths, t: number, energies: readonly number[]): void {
  const levels = [...new Set(energies)].filter((energy) => energy > 0).sort((a, b) => a - b);
  levels.forEach((level, i) => {
    const literal = points.inModes(
      t,
      energies.flatMap((energy, m) => (energy >= level ? [m] : [])),
    );
    lengths.addTo(sum, lengths.scaled(literal, level - (levels[i - 1] ?? 0)), 1);
  });
}
