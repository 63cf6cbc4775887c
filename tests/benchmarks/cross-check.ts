/** Engines, seeds and efforts held against each other on random problems too large to enumerate. */
import type { Outcome, Solve } from '../../solver/engine/outcome.ts';
import type { Problem } from '../../solver/engine/problem.ts';
import { faultsOf, plainTierValues } from '../support/plain-check.ts';
import { randomProblem, type ProblemShape } from '../support/random-problem.ts';

/** From 12 to 30 tasks within two hours. */
export const mediumShape: ProblemShape = { tasks: [12, 30], horizon: [40, 120], length: 15, otherwise: 0.4 };

interface Answer {
  readonly by: string;
  readonly outcome: Outcome;
}

/**
 * Solves each problem by every engine under two seeds, a short and a full effort, stopped early, and from a plan already
 * known; then looks for two answers that cannot both be true.
 *
 * @returns how many problems had a contradiction
 */
export function crossCheck(
  engines: Readonly<Record<string, Solve>>,
  asked: { readonly first: number; readonly count: number; readonly effort: number },
): number {
  let wrong = 0;
  const kinds: Record<string, number> = {};
  for (let seed = asked.first; seed < asked.first + asked.count; seed += 1) {
    const problem = randomProblem(seed, mediumShape);
    const answers = Object.entries(engines).flatMap(([name, solve]) => answersOf(name, solve, problem, asked.effort));
    const faults = contradictions(problem, answers);
    for (const { by, outcome } of answers) kinds[`${by} ${outcome.kind}`] = (kinds[`${by} ${outcome.kind}`] ?? 0) + 1;
    if (faults.length === 0) continue;
    wrong += 1;
    console.log(`random problem ${seed} of medium shape:\n  ${faults.join('\n  ')}`);
  }
  console.error(`${asked.count} problems, ${wrong} with contradictions: ${JSON.stringify(kinds)}`);
  return wrong;
}

function answersOf(name: string, solve: Solve, problem: Problem, effort: number): Answer[] {
  const full = solve(problem, { seed: 1, effort });
  const again = solve(problem, { seed: 1, effort });
  const answers: Answer[] = [
    { by: `${name} full`, outcome: full },
    { by: `${name} seed 2`, outcome: solve(problem, { seed: 2, effort }) },
    { by: `${name} short`, outcome: solve(problem, { seed: 3, effort: Math.ceil(effort / 50) }) },
  ];
  if (JSON.stringify(full) !== JSON.stringify(again)) answers.push({ by: `${name} repeated differs`, outcome: again });
  let looks = 40;
  const shouldStop = (): boolean => (looks -= 1) < 0;
  answers.push({ by: `${name} stopped`, outcome: solve(problem, { seed: 1, effort, shouldStop }) });
  if ('solution' in full) {
    const outcome = solve(problem, { seed: 4, effort: Math.ceil(effort / 50), start: full.solution });
    answers.push({ by: `${name} started`, outcome });
  }
  return answers;
}

/** Sentences about answers that are wrong in themselves or cannot stand together. */
function contradictions(problem: Problem, answers: readonly Answer[]): string[] {
  const faults: string[] = [];
  const plans: { readonly by: string; readonly values: readonly number[] }[] = [];
  for (const { by, outcome } of answers) {
    if (by.endsWith('differs')) faults.push(by);
    if (!('solution' in outcome)) continue;
    const [invalid] = faultsOf(problem, outcome.solution);
    if (invalid !== undefined) faults.push(`${by}: invalid, ${invalid}`);
    const values = plainTierValues(problem, outcome.solution);
    if (outcome.tiers.some((tier, index) => tier.value !== values[index]))
      faults.push(`${by}: values are not the plan's`);
    if (outcome.tiers.some((tier) => tier.bound > tier.value)) faults.push(`${by}: a bound above its value`);
    if (invalid === undefined) plans.push({ by, values });
  }
  for (const { by, outcome } of answers) {
    for (const plan of plans) {
      if (outcome.kind === 'impossible') faults.push(`${by}: impossible, but ${plan.by} has a plan`);
      if (!('solution' in outcome)) continue;
      for (const [index, tier] of outcome.tiers.entries()) {
        const value = plan.values[index] ?? 0;
        // A bound speaks of the plans that are as good in all tiers above.
        if (value < tier.bound) faults.push(`${by}: ${tier.id} bound ${tier.bound}, but ${plan.by} has ${value}`);
        if (!tier.proven || value !== tier.value) break;
      }
    }
  }
  return [...new Set(faults)];
}
