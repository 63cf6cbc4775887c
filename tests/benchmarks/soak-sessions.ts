/** A long soak: random sessions are planned, every plan is checked and walked through, and what either finds is told. */
import { checkPlan } from '../../solver/checker/check-plan.ts';
import { planSession } from '../../solver/translate/plan-session.ts';
import { randomSession } from '../support/random-session.ts';
import { walkCooking } from '../support/walk-cooking.ts';
import { walkThrough } from '../support/walk-through.ts';

export interface SoakOptions {
  /** First seed. */
  readonly from?: number;
  /** Size of the sessions, 1 to 3; absent: mostly 1, sometimes 2. */
  readonly size?: number;
  /** Work units for each plan. */
  readonly effort?: number;
  /** Most seconds for each plan, so that one hard session does not hold up the rest. */
  readonly seconds?: number;
}

/**
 * Plans and checks random sessions.
 *
 * @param count how many, one seed each
 * @returns how many faults there were: invalid plans, plans that a walk finds fault with, and outright failures
 */
export function run(count: number, options: SoakOptions = {}): number {
  const { from = 0, effort = 30_000, seconds = 10 } = options;
  const counts: Record<string, number> = {};
  const add = (what: string): void => void (counts[what] = (counts[what] ?? 0) + 1);
  let bad = 0;
  for (let seed = from; seed < from + count; seed++) {
    const size = options.size ?? (seed % 8 === 7 ? 2 : 1);
    const began = Date.now();
    try {
      const shouldStop = (): boolean => Date.now() - began > seconds * 1000;
      const outcome = planSession({ ...randomSession(seed, size), seed: 1, effort, shouldStop });
      add(outcome.kind);
      if (outcome.kind === 'refused') {
        const { document, path, found } = outcome.faults[0]!;
        console.log(`${seed} refused: ${document} ${path}: ${found}`);
      } else if (outcome.kind === 'impossible') {
        console.log(`${seed} impossible: ${outcome.reason} (${outcome.requirements.join('; ')})`);
      } else if (outcome.kind === 'planned') {
        const violations = checkPlan(outcome.plan);
        const walked = [...walkThrough(outcome.plan), ...walkCooking(outcome.plan)];
        if (walked.length > 0) {
          bad++;
          add('plans that a walk finds fault with');
          console.log(`${seed} size ${size}, walked: ${walked.slice(0, 3).join('; ')}`);
        }
        if (violations.length > 0) {
          bad++;
          for (const rule of new Set(violations.map((each) => each.rule))) add(`plans breaking rule ${rule}`);
          console.log(`${seed} size ${size}: ${violations.length} violations`);
          for (const { rule, message } of violations.slice(0, 3)) console.log(`   ${rule}: ${message}`);
        }
      }
    } catch (error) {
      bad++;
      add('failed');
      console.log(`${seed} size ${size} failed: ${(error as Error).stack?.split('\n').slice(0, 4).join('\n')}`);
    }
    const took = (Date.now() - began) / 1000;
    if (took > 5) console.log(`${seed} took ${took.toFixed(1)} s`);
  }
  console.log(`${count} sessions from seed ${from}:`, counts);
  return bad;
}
