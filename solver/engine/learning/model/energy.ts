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

/**
 * @param sets resources, alone and together, that are worth looking at
 * @param idle minutes of an exclusive resource between two of its tasks, when nothing comes between them
 */
export function addEnergy(
  problem: Problem,
  core: Core,
  points: Points,
  differences: Differences,
  lengths: Lengths,
  tiers: readonly TierVariable[],
  sets: readonly ReadonlySet<string>[],
  idle: readonly Idle[],
): void {
  const stocks = stocksOf(problem);
  const always = problem.tasks.map((_, t) => points.present[t] === core.trail.alwaysTrue);
  problem.tiers.forEach((tier, k) => {
    const part = tiers[k]!.parts[0];
    if (tier.kind !== 'latest' || part === undefined) return;
    const tails = tailsTo(tier, problem, core, points, differences);
    for (const set of sets) {
      let capacity = 0;
      for (const resource of problem.resources)
        if (set.has(resource.id))
          capacity += Math.max(resource.capacity, ...(resource.calendar ?? []).map((entry) => entry.capacity));
      const sum = new Sum();
      const all: (number | null)[][] = [];
      let users = 0;
      let sure = false;
      let head = problem.horizon;
      let tail = problem.horizon;
      problem.tasks.forEach((task, t) => {
        all.push(task.modes.map((mode) => (mode === null ? null : 0)));
        if (tails[t]! < 0) return;
        const energies = task.modes.map((mode) => {
          let amount = 0;
          for (const use of mode?.uses ?? []) if (set.has(use.resource)) amount += use.amount;
          return amount * Math.min(mode?.shortest ?? 0, problem.horizon);
        });
        if (energies.every((energy) => energy === 0)) return;
        all[t] = task.modes.map((mode, m) => (mode === null ? null : energies[m]!));
        users++;
        if (always[t]!) sure = true;
        const start = points.starts[t]!;
        head = Math.min(head, core.trail.declaredLower(start.x) + start.offset);
        tail = Math.min(tail, tails[t]!);
        addLeast(sum, points, lengths, t, energies);
      });
      for (const { resource, first, second, gap, literal } of idle)
        if (set.has(resource) && tails[first]! >= 0 && tails[second]! >= 0)
          lengths.addTo(sum, lengths.scaled(literal, gap), 1);
      if (users < 2 || capacity === 0) continue;
      // All of it lies between the least head and the tier less the least tail, once one of the tasks is surely there.
      const margin = sure ? head + tail : 0;
      sum.add(part.x, -capacity).atMost(core, -capacity * margin, core.trail.alwaysTrue);
      const weights = stocks.length === 0 ? null : weightsOf(stocks, all, always);
      if (weights === null) continue;
      const both = new Sum();
      all.forEach((energies, t) => {
        const costs = energies.map((energy, m) =>
          energy === null
            ? 0
            : stocks.reduce((cost, stock, s) => cost + weights[s]! * stock.drawn[t]![m]!, SCALE * energy),
        );
        addLeast(both, points, lengths, t, costs);
      });
      const room = stocks.reduce((worth, { amount }, s) => worth + weights[s]! * amount, 0);
      both.add(part.x, -SCALE * capacity).atMost(core, room - SCALE * capacity * margin, core.trail.alwaysTrue);
    }
  });
}

/** By task: the tier is at least its end plus this, in every solution; negative where nothing is known. */
function tailsTo(tier: LatestTier, problem: Problem, core: Core, points: Points, differences: Differences): number[] {
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
