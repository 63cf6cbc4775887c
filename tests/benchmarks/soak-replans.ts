/** A long soak of replanning: random sessions are planned and lived through with chains of news, and what is wrong is told. */
import { planSession } from '../../solver/translate/plan-session.ts';
import { liveThrough, noChains } from '../support/event-chains.ts';
import { randomSession } from '../support/random-session.ts';
import { seeded } from '../support/seeded.ts';

/** Chains of news of each session. */
const CHAINS = 4;
/** Work units for each plan to begin with. */
const EFFORT = 2_000;
/** Sessions between two lines of progress. */
const PROGRESS = 200;

export interface ReplanSoak {
  /** Sessions, one seed each. */
  readonly count: number;
  /** First seed. */
  readonly from: number;
  /** Size of the sessions, 1 to 3; absent: 1, and every fourth 2. */
  readonly size?: number;
}

/** @returns how many chains ended in a fault */
export function soakReplans({ count, from, size }: ReplanSoak): number {
  const counts = noChains();
  let wrong = 0;
  for (let seed = from; seed < from + count; seed++) {
    const made = planSession({ ...randomSession(seed, size ?? (seed % 4 === 3 ? 2 : 1)), seed: 1, effort: EFFORT });
    if (made.kind === 'planned')
      for (let chain = 0; chain < CHAINS; chain++) {
        const faults = liveThrough(made.plan, seeded(seed * CHAINS + chain), counts);
        if (faults.length > 0) wrong++;
        for (const fault of faults) console.log(`${seed} ${fault}`);
      }
    const done = seed + 1 - from;
    if (done % PROGRESS === 0 || done === count)
      console.log(
        `${done} of ${count} sessions (go on: --from ${seed + 1} --count ${count - done}): ${counts.replans} replans, refused ${counts.refused}, ` +
          `with something broken ${counts.broken}, without a plan ${counts.withoutPlan}; chains at fault ${wrong}`,
      );
  }
  return wrong;
}
