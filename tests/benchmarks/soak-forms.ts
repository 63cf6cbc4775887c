/** A long soak: what the engines prove of a problem held against what they prove of its other forms. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { referenceProblem } from '../support/random-problem-reference.ts';
import { faultsBetweenForms } from '../support/same-optimum.ts';

/**
 * Solves small problems in every form that they have.
 *
 * @param asked how many, from which on, and a folder for those that are contradicted; none are written where not given
 * @returns how many problems had a contradiction
 */
export function soakForms(asked: {
  readonly count: number;
  readonly from: number;
  readonly out: string | undefined;
}): number {
  let wrong = 0;
  let proofs = 0;
  for (let index = asked.from; index < asked.from + asked.count; index++) {
    const problem = referenceProblem(index);
    const told = faultsBetweenForms(problem, index);
    proofs += told.proofs;
    if (told.faults.length === 0) continue;
    wrong++;
    console.log(`problem ${index}:\n  ${told.faults.join('\n  ')}`);
    if (asked.out !== undefined) writeFileSync(join(asked.out, `forms-${index}.json`), JSON.stringify(problem));
  }
  console.log(`${asked.count} problems from ${asked.from} in every form, ${proofs} proofs, ${wrong} contradicted`);
  return wrong;
}
