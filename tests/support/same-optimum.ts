/** What one engine proves of a problem, held against what each proves of its other forms. */
import { solveByLearning } from '../../solver/engine/learning/prove.ts';
import type { Outcome, Solve } from '../../solver/engine/outcome.ts';
import type { Problem } from '../../solver/engine/problem.ts';
import { solve } from '../../solver/engine/solve.ts';
import { solveTogether } from '../../solver/engine/together.ts';
import { otherForms } from './other-forms.ts';
import { faultsOf } from './plain-check.ts';

/** Each engine with the work units it is given, by its own measure. */
const engines: readonly (readonly [name: string, solve: Solve, effort: number])[] = [
  ['learning', solveByLearning, 10_000_000],
  ['together', solveTogether, 500_000],
  ['ensemble', solve, 250_000],
];

/**
 * Solves a problem and each of its other forms by every engine.
 *
 * @param seed of the forms
 * @param effort as a multiple of what the engines are usually given here
 * @returns a sentence for each proof that stands against another, and how many tiers, or impossibilities, were proved
 */
export function faultsBetweenForms(
  problem: Problem,
  seed: number,
  effort = 1,
): { readonly faults: readonly string[]; readonly proofs: number } {
  const faults: string[] = [];
  let proofs = 0;
  /** In units of the first form. */
  const best: { by: string; values: readonly number[]; proven: number }[] = [];
  const none: string[] = [];
  for (const form of [{ name: 'as it is', problem, factor: 1 }, ...otherForms(problem, seed)])
    for (const [name, engine, units] of engines) {
      const by = `${name}, ${form.name}`;
      const outcome: Outcome = engine(form.problem, { seed: 1, effort: Math.ceil(units * effort) });
      if (outcome.kind === 'impossible') {
        none.push(by);
        proofs++;
      }
      if (!('solution' in outcome)) continue;
      faults.push(...faultsOf(form.problem, outcome.solution).map((fault) => `${by}: ${fault}`));
      const proven = outcome.tiers.findIndex((tier) => !tier.proven);
      const values = outcome.tiers.map(({ value }) => value / form.factor);
      best.push({ by, values, proven: proven < 0 ? values.length : proven });
      proofs += best.at(-1)!.proven;
    }
  for (const { by } of best) for (const other of none) faults.push(`${by} has a plan, ${other} says there is none`);
  for (const one of best)
    for (const other of best)
      for (let tier = 0; tier < one.proven; tier++) {
        // Under equal tiers above, a proven value is the least there is.
        const [mine, theirs] = [one.values[tier]!, other.values[tier]!];
        if (theirs < mine) faults.push(`${one.by} proves ${mine} of tier ${tier}, ${other.by} has ${theirs}`);
        if (theirs !== mine) break;
      }
  return { faults, proofs };
}
