/** A long soak: every reason and learned clause of the learning engine held against every plan of tiny problems. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { everySolution } from '../support/brute-force.ts';
import { audit, probe } from '../support/explanation-audit.ts';
import { randomProblem, type ProblemShape } from '../support/random-problem.ts';

const shape: ProblemShape = { tasks: [2, 5], horizon: [3, 8], length: 4 };
/** Most plans of one problem that are looked at; the first ones, where there are more. */
const PLANS = 3_000;
const DIVES = 40;

/**
 * Solves tiny problems, and brings the engine into random states on them, with every reason watched.
 *
 * @param asked how many, from which seed on, and a folder for those with a wrong reason; none are written where not given
 * @returns how many problems had a wrong reason or clause
 */
export function soakAudit(asked: {
  readonly count: number;
  readonly from: number;
  readonly out: string | undefined;
}): number {
  let wrong = 0;
  let checked = 0;
  let problems = 0;
  for (let seed = asked.from; seed < asked.from + asked.count; seed++) {
    const problem = randomProblem(90_000 + seed, shape);
    const plans = everySolution(problem, PLANS);
    if (plans === null || plans.length === 0) continue;
    problems++;
    const results = [audit(problem, plans), probe(problem, plans, DIVES, seed)];
    checked += results.reduce((sum, result) => sum + result.checked, 0);
    const told = results.flatMap((result) => result.wrong);
    if (told.length === 0) continue;
    wrong++;
    console.log(`problem ${seed}: ${[...new Set(told)].slice(0, 3).join('; ')}`);
    if (asked.out !== undefined) writeFileSync(join(asked.out, `audit-${seed}.json`), JSON.stringify(problem));
  }
  console.log(
    `${problems} tiny problems with plans of ${asked.count}, ${checked} checks, ${wrong} with a wrong reason`,
  );
  return wrong;
}
