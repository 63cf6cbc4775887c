/** What chains, stocks and energies say together of the modes of a multi-mode project, as a fact of the model. */
import { chainInequality } from '../../bounds/chain-inequality.ts';
import { chainPrices } from '../../bounds/chain-program.ts';
import { asModeProject } from '../../project/mode-project.ts';
import type { Problem } from '../../problem.ts';
import type { Core } from '../core.ts';
import { addLeast } from './energy.ts';
import type { Lengths } from './lengths.ts';
import type { Points } from './points.ts';
import { Sum } from './sums.ts';
import type { TierVariable } from './tiers.ts';

/** Most tasks of a project whose linear program is worth its time: that grows with their cube (half a second at 150). */
const MOST_TASKS = 150;

/** Posts the inequality of `chain-inequality.ts` where the problem is a multi-mode project; otherwise nothing. */
export function addChains(
  problem: Problem,
  core: Core,
  points: Points,
  lengths: Lengths,
  tiers: readonly TierVariable[],
): void {
  const project = problem.tasks.length > MOST_TASKS ? null : asModeProject(problem);
  const part = tiers[0]?.parts[0];
  if (project === null || part === undefined) return;
  const { costs, constant, factor } = chainInequality(project, chainPrices(project));
  const { firstMode } = project.modes;
  const sum = new Sum();
  problem.tasks.forEach((_, task) => {
    const own = costs.subarray(firstMode[task], firstMode[task + 1]);
    addLeast(sum, points, lengths, task, Array.from(own));
  });
  sum.add(part.x, -factor).atMost(core, -constant, core.trail.alwaysTrue);
}
