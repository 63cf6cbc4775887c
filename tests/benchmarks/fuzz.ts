/** Random problems solved by an engine and judged by the references: finds faults, and shrinks what it finds. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Outcome, Solve } from '../../solver/engine/outcome.ts';
import type { Problem } from '../../solver/engine/problem.ts';
import { bruteForce, lexicographicallyLess, type BruteForce } from '../support/brute-force.ts';
import { faultsOf, plainTierValues } from '../support/plain-check.ts';
import { randomProblem, tinyShape, type ProblemShape } from '../support/random-problem.ts';
import { shrinkProblem } from '../support/shrink-problem.ts';

export interface Fuzzing {
  readonly first: number;
  readonly count: number;
  readonly effort: number;
  readonly seed: number;
  /** A folder for shrunk problems; none are written where not given. */
  readonly out: string | undefined;
}

/**
 * Names what is wrong with an outcome of a tiny problem; null where nothing is.
 * Where the effort was enough, a plan that is not proven is no fault, but is counted by the caller.
 */
export function faultOf(problem: Problem, outcome: Outcome, truth: BruteForce): string | null {
  if (outcome.kind === 'unknown' || truth.kind === 'unfinished') return null;
  if (outcome.kind === 'impossible') return truth.kind === 'optimal' ? 'wrongly impossible' : null;
  const [invalid] = faultsOf(problem, outcome.solution);
  if (invalid !== undefined) return `invalid: ${invalid.replace(/\d+/g, 'N')}`;
  if (truth.kind === 'infeasible') return 'the references disagree';
  const values = plainTierValues(problem, outcome.solution);
  if (outcome.tiers.some((tier, index) => tier.value !== values[index])) return 'a value is not the plan’s';
  if (lexicographicallyLess(values, truth.values)) return 'the references disagree';
  for (const [index, tier] of outcome.tiers.entries()) {
    if (tier.bound > tier.value) return 'a bound above its value';
    if (tier.proven && tier.value !== truth.values[index]) return `wrong proof of a ${problem.tiers[index]?.kind} tier`;
    if (index === 0 && tier.bound > (truth.values[0] ?? 0)) return 'a bound above the truth';
  }
  return null;
}

/** Runs random tiny problems through the engine and prints each kind of fault with a shrunk example. Returns the exit code. */
export function fuzz(solve: Solve, asked: Fuzzing, shape: ProblemShape = tinyShape): number {
  const options = { seed: asked.seed, effort: asked.effort };
  const seen = new Map<string, number>();
  const counts = { proven: 0, bounded: 0, impossible: 0, unknownFeasible: 0, unknownInfeasible: 0, notBest: 0 };
  const judge = (problem: Problem): string | null => {
    const truth = bruteForce(problem, 2_000_000);
    let outcome: Outcome;
    try {
      outcome = solve(problem, options);
    } catch (error) {
      return `throws ${error instanceof Error ? error.name : 'something'}`;
    }
    return faultOf(problem, outcome, truth);
  };
  for (let seed = asked.first; seed < asked.first + asked.count; seed += 1) {
    const problem = randomProblem(seed, shape);
    const truth = bruteForce(problem, 2_000_000);
    let fault: string | null;
    try {
      const outcome = solve(problem, options);
      fault = faultOf(problem, outcome, truth);
      if (outcome.kind !== 'unknown') counts[outcome.kind] += 1;
      else if (truth.kind === 'optimal') counts.unknownFeasible += 1;
      else counts.unknownInfeasible += 1;
      if ('solution' in outcome && truth.kind === 'optimal') {
        if (lexicographicallyLess(truth.values, plainTierValues(problem, outcome.solution))) counts.notBest += 1;
      }
    } catch (error) {
      fault = `throws ${error instanceof Error ? error.name : 'something'}`;
      if (!seen.has(fault)) console.error(error);
    }
    if (fault === null) continue;
    const times = (seen.get(fault) ?? 0) + 1;
    seen.set(fault, times);
    if (times > 2) continue;
    const same = fault;
    const shrunk = shrinkProblem(problem, (each) => judge(each) === same);
    console.log(`random problem ${seed}: ${fault}`);
    if (asked.out === undefined) console.log(JSON.stringify(shrunk));
    else writeFileSync(join(asked.out, `random-${seed}.json`), `${JSON.stringify(shrunk, null, 1)}\n`);
  }
  console.error(`${asked.count} problems: ${JSON.stringify(counts)}; faults: ${JSON.stringify([...seen])}`);
  return seen.size > 0 ? 1 : 0;
}
