/** A long soak: small random problems solved by every engine, and each proof held against references that share nothing with them. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { bruteForce } from '../support/brute-force.ts';
import { randomProblem, tinyShape } from '../support/random-problem.ts';
import { faultsBeside, referenceProblem, type Truth } from '../support/random-problem-reference.ts';
import { timeIndexedTiers } from '../support/time-indexed-reference.ts';
import type { Problem } from '../../solver/engine/problem.ts';
import { engines } from './engines.ts';

export interface ReferenceSoak {
  readonly count: number;
  readonly from: number;
  /** Most seconds of the integer program for each tier. */
  readonly seconds: number;
  /** A folder for problems that an engine gets wrong; none are written where not given. */
  readonly out: string | undefined;
}

/** Work units on each problem, by each engine's own measure. */
const EFFORT: Readonly<Record<string, number>> = { together: 600_000, ensemble: 300_000, learning: 10_000_000 };

/**
 * Solves small problems (against the integer program, tier after tier) and as many tiny ones (against complete enumeration).
 *
 * @returns how many answers were wrong
 */
export async function soakReference(asked: ReferenceSoak): Promise<number> {
  let wrong = 0;
  const counts: Record<string, number> = {};
  const add = (what: string): void => void (counts[what] = (counts[what] ?? 0) + 1);
  for (let index = asked.from; index < asked.from + asked.count; index++) {
    for (const [size, problem, truth] of [
      ['tiny', ...tinyCase(index)],
      ['small', ...(await smallCase(index, asked.seconds))],
    ] as const) {
      add(`${size} ${truth === null ? 'without a reference in time' : truth.kind}`);
      if (truth?.kind === 'optimal' && truth.values.length < problem.tiers.length)
        add(`${size} with part of the tiers`);
      for (const [name, solve] of Object.entries(engines)) {
        const outcome = solve(problem, { seed: 1, effort: EFFORT[name]! });
        add(`${size} ${name} ${outcome.kind}`);
        const faults = faultsBeside(problem, outcome, truth);
        if (faults.length === 0) continue;
        wrong++;
        console.log(`${size} problem ${index}, ${name}: ${faults.join('; ')}`);
        if (asked.out !== undefined)
          writeFileSync(join(asked.out, `${size}-${index}-${name}.json`), `${JSON.stringify(problem, null, 1)}\n`);
      }
    }
  }
  console.log(`${asked.count} small and as many tiny problems from ${asked.from}, ${wrong} wrong answers:`, counts);
  return wrong;
}

function tinyCase(index: number): [Problem, Truth | null] {
  const problem = randomProblem(10_000 + index, tinyShape);
  const truth = bruteForce(problem);
  return [problem, truth.kind === 'unfinished' ? null : truth];
}

async function smallCase(index: number, seconds: number): Promise<[Problem, Truth | null]> {
  const problem = referenceProblem(index);
  const truth = await timeIndexedTiers(problem, seconds);
  return [problem, truth.kind === 'optimal' && truth.values.length === 0 ? null : truth];
}
