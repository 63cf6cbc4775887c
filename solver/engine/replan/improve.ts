/**
 * Improves a way to go on by moves on its critical chain, as long as one makes `finish + penalty × changed` less. Each move keeps
 * all other orders; the times that follow are held to every rule of the problem before they count.
 */
import { withTimes, type OrderArc } from '../explain/plan-order.ts';
import { lagArcs, lengthArcs } from '../explain/order-arcs.ts';
import { byNumber } from '../explain/by-number.ts';
import { takenBy } from '../explain/taken.ts';
import type { Budget } from '../budget.ts';
import type { Solution } from '../outcome.ts';
import type { Literal, Problem } from '../problem.ts';
import { verifySolution } from '../verify-solution.ts';
import type { ReplanAsked, Worth } from './asked.ts';
import { ArcTable } from './arc-table.ts';
import { boundsByFacts, carryOn } from './carry-on.ts';
import { keptOrder, sequenceArcs } from './kept-order.ts';
import { criticalArcs, moves, type MoveGround, type Way } from './moves.ts';
import { restorations } from './restorations.ts';

/** Budget steps of one check of a whole plan, beside a pass over an arc as one. */
export const VERIFY_STEPS = 10_000;
/** Budget steps of reading the order of a plan, for each of its arcs. */
export const READ_STEPS = 20;

export interface Going {
  readonly solution: Solution;
  readonly worth: Worth;
}

/** Presence of tasks under options. */
export function presence(problem: Problem): (task: number, choices: readonly number[]) => boolean {
  const position = byNumber(problem).choices;
  return (task, choices) => {
    const { when, choice, modes } = problem.tasks[task]!;
    const holds = (literal: Literal): boolean => literal.options.includes(choices[position.get(literal.choice)!]!);
    return (
      (when ?? []).every(holds) && (modes[choice === undefined ? 0 : choices[position.get(choice)!]!] ?? null) !== null
    );
  };
}

/** Arcs of ways that come from one plan: their lags and lengths, the orders kept of that plan, and their sequences. */
export interface WayArcs {
  readonly table: (way: Way) => ArcTable;
  readonly list: (way: Way) => readonly OrderArc[];
}

/** Ways that take the same options differ in their sequences alone, so the rest is put together once for each. */
export function arcsFrom(problem: Problem, { choices, tasks }: Solution, kept: readonly OrderArc[]): WayArcs {
  const known = new Map<readonly number[], { readonly arcs: readonly OrderArc[]; readonly table: ArcTable }>();
  const base = (way: Way): { readonly arcs: readonly OrderArc[]; readonly table: ArcTable } => {
    let entry = known.get(way.choices);
    if (entry === undefined) {
      const taken = takenBy(problem, { choices: way.choices, tasks });
      const arcs = [
        ...lengthArcs(problem, taken),
        ...lagArcs(problem, taken),
        ...keptFor(problem, kept, choices, way.choices),
      ];
      known.set(way.choices, (entry = { arcs, table: ArcTable.of(arcs) }));
    }
    return entry;
  };
  return {
    table: (way) => base(way).table.along(way.sequences),
    list: (way) => [...base(way).arcs, ...sequenceArcs(way.sequences)],
  };
}

/** Orders that soil or shared room asked of what goes elsewhere go with it; a check of the whole tells whether others are asked. */
function keptFor(
  problem: Problem,
  kept: readonly OrderArc[],
  before: readonly number[],
  after: readonly number[],
): readonly OrderArc[] {
  const moved = new Uint8Array(problem.tasks.length);
  let any = false;
  for (let choice = 0; choice < before.length; choice++) {
    if (before[choice] === after[choice]) continue;
    any = true;
    for (const task of byNumber(problem).tasksOf[choice]!) moved[task] = 1;
  }
  if (!any) return kept;
  const stays = (node: number): boolean => node === 0 || moved[(node - 1) >> 1] === 0;
  return kept.filter(({ from, to }) => stays(from) && stays(to));
}

/**
 * @param problem settled
 * @param start a solution of it with its worth
 * @param fixed choices that facts decide
 * @param still tasks that may not be moved
 * @param about arcs in the order of the start, as near as is known: reading more of an order than can be paid for leads nowhere
 * @returns the best found, the start where nothing is better
 */
export function improve(
  asked: ReplanAsked,
  problem: Problem,
  start: Going,
  worth: (solution: Solution) => Worth,
  fixed: (choice: number) => boolean,
  still: (task: number) => boolean,
  about: number,
  budget: Budget,
): Going {
  const present = presence(problem);
  let best = start;
  // The order of a plan has about as many arcs as that of the one before.
  let arcs = about;
  while (budget.allows(arcs * READ_STEPS)) {
    const found = betterNearby(best);
    if (found === null) return best;
    best = found;
  }
  return best;

  function betterNearby(from: Going): Going | null {
    const order = keptOrder(problem, from.solution, asked.facts);
    arcs = order.arcs.length;
    budget.spend(arcs * READ_STEPS);
    const kept = order.arcs.filter(({ why }) => why.kind !== 'length' && why.kind !== 'lag' && why.kind !== 'horizon');
    const way: Way = { choices: from.solution.choices, sequences: order.sequences };
    const lower = boundsByFacts(asked, (task) => from.solution.tasks[task] !== null);
    const arcsOf = arcsFrom(problem, from.solution, kept);
    const carried = carryOn(asked, arcsOf.table(way), lower);
    if (carried.kind === 'cycle') return null;
    const chain = criticalArcs(
      arcsOf.list(way),
      carried.times,
      lower,
      asked.finish.filter((node) => lower[node]! >= 0),
    );
    const ground: MoveGround = { problem, way, times: carried.times, still, fixed, present };
    // What a search from nothing changed without need goes back, the first that helps at once.
    for (const next of restorations(asked, ground)) {
      if (budget.over()) break;
      const moved = tryWay(next, from.solution, arcsOf.table(next), lower, from.worth.total);
      if (moved !== null && moved.worth.total < from.worth.total) return moved;
    }
    let best: Going | null = null;
    for (const next of moves(ground, chain)) {
      if (budget.over()) break;
      const limit = (best ?? from).worth.total;
      const moved = tryWay(next, from.solution, arcsOf.table(next), lower, limit);
      if (moved !== null && moved.worth.total < limit) best = moved;
    }
    return best;
  }

  function tryWay(way: Way, from: Solution, arcs: ArcTable, lower: Int32Array, limit: number): Going | null {
    const carried = carryOn(asked, arcs, lower, limit);
    budget.spend(carried.steps);
    if (carried.kind === 'cycle' || carried.finish >= limit) return null;
    const solution = withTimes({ choices: way.choices, tasks: from.tasks }, carried.times);
    // What is due soon is left alone by what is moved elsewhere, too.
    if (solution.tasks.some((at, task) => still(task) && at?.start !== from.tasks[task]?.start)) return null;
    budget.spend(VERIFY_STEPS);
    if (verifySolution(problem, solution).length > 0) return null;
    return { solution, worth: worth(solution) };
  }
}
