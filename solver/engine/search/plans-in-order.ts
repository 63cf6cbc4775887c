/**
 * Plans built in the order of another one: the quickest way on when that one itself is no plan any more.
 *
 * Each dive takes the tasks by their old starts and the old options first. What finds no place goes earlier in the next dive, and more and more
 * of the options are left open.
 *
 * Source: Joslin and Clements (1999), Squeaky wheel optimization.
 */
import type { Budget } from '../budget.ts';
import type { Solution } from '../outcome.ts';
import type { Problem } from '../problem.ts';
import { usualStarts } from './usual-starts.ts';
import { prepare, Workshop } from './workshop.ts';

/** Dives with every old option led, with those of tasks led half of the time, and with none. */
const DIVES = [
  { led: 100, whim: 0 },
  { led: 100, whim: 0 },
  { led: 50, whim: 5 },
  { led: 50, whim: 10 },
  { led: 0, whim: 0 },
  { led: 0, whim: 15 },
] as const;
const FAILS = 30;
/** A task in trouble goes earlier by this share of the horizon. */
const FORWARD = 1 / 30;

export interface InOrder {
  readonly plans: readonly Solution[];
  readonly impossible: boolean;
}

/**
 * @param problem a problem that `validateProblem` accepts
 * @param old choices and times to follow, of the same choices and tasks; it need keep no rule
 * @returns plans of the problem, best followed first, none where the budget ended or every dive ran into dead ends; and whether
 *   propagation alone has proved that there is no plan at all
 */
export function plansInOrder(problem: Problem, old: Solution, seed: number, budget: Budget): InOrder {
  const parts = prepare(problem, budget);
  if (parts === null) return { plans: [], impossible: false };
  const workshop = new Workshop(problem, budget, { seed }, parts);
  if (!workshop.consistent) return { plans: [], impossible: true };
  const { compiled, structure, dive, random } = workshop;
  // Work that was not there comes when that of its group usually does.
  const starts = Float64Array.from(problem.tasks, (_, task) => old.tasks[task]?.start ?? -1);
  const key = usualStarts(compiled.group, starts).map((usual, task) => (starts[task]! < 0 ? usual : starts[task]!));
  const plans: Solution[] = [];
  for (const { led, whim } of DIVES) {
    if (budget.over()) break;
    const guide = Int32Array.from(old.choices, (option, choice) =>
      structure.onDemand[choice] !== 1 && random.percent(led) ? option : -1,
    );
    dive.forget();
    const orders = { backward: false, parallel: false, key, guide, whim, shapeWhim: 0, failLimit: FAILS };
    const plan = workshop.diveOnce(orders);
    if (plan !== null) plans.push(workshop.solution(plan));
    for (let task = 0; task < key.length; task++)
      if ((dive.trouble[task] as number) > 0) key[task] = (key[task] as number) - compiled.horizon * FORWARD;
  }
  return { plans, impossible: false };
}
