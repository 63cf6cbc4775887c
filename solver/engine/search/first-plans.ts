/**
 * First plans: dives by one priority rule after the other. Tasks that made a dive fail go earlier in the next ("squeaky wheel",
 * Joslin and Clements 1999), and what soils more goes later in every other round.
 */
import { priorityRules, type PriorityRule } from './priority-rules.ts';
import type { Workshop } from './workshop.ts';

/**
 * Dives until a plan is found and `rounds` rules were tried, or the budget is spent.
 *
 * @param rounds how many rules to try at least
 * @param most how many to try at most, where none gives a plan
 */
export function findFirstPlans(workshop: Workshop, rounds: number, most: number): void {
  const { compiled, structure, dive, budget } = workshop;
  const boost = new Float64Array(compiled.taskCount);
  const { start, items } = structure.blockTasks;
  for (let round = 0; round < most && !budget.over(); round++) {
    if (round >= rounds && workshop.best !== null) return;
    const rule = priorityRules[round % priorityRules.length] as PriorityRule;
    dive.forget();
    const failLimit = 12 + 4 * Math.min(20, round);
    const soilWeight = round % 2 === 1 ? compiled.horizon : 0;
    const plan = workshop.planByRule(rule, failLimit, round < 12 ? 0 : 15, boost, soilWeight);
    for (let task = 0; task < boost.length; task++) {
      if (plan !== null) {
        boost[task] = (boost[task] as number) * 0.7;
        continue;
      }
      const trouble = dive.trouble[task] as number;
      if (trouble === 0) continue;
      const block = structure.block[task] as number;
      for (let k = start[block] as number; k < (start[block + 1] as number); k++) {
        const other = items[k] as number;
        boost[other] = (boost[other] as number) + compiled.horizon / 20;
      }
    }
    budget.spend(50);
  }
}
