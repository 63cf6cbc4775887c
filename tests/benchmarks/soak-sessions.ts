/** A long soak: random sessions are planned, every plan is checked and walked through, and what either finds is told. */
import { checkPlan } from '../../solver/checker/check-plan.ts';
import type { Plan } from '../../solver/kitchen/plan.ts';
import { planSession } from '../../solver/translate/plan-session.ts';
import { randomSession } from '../support/random-session.ts';
import { walkThroughHeat, walkToTheFridge } from '../support/walk-cooking.ts';
import { walkThrough } from '../support/walk-through.ts';

/**
 * Work units for each plan. A plan is as safe where it is found as where it is proven best, so few are enough: 10,000 sessions take
 * about a quarter of an hour of one core.
 */
export const SESSION_EFFORT = 2_000;

/** Sessions between two lines of progress. */
const PROGRESS = 500;

export interface SoakOptions {
  /** First seed. */
  readonly from?: number;
  /** Size of the sessions, 1 to 3; absent: 1, and every eighth 2. */
  readonly size?: number;
  /** Work units for each plan. */
  readonly effort?: number;
  /** Most seconds for each plan, so that one hard session does not hold up the rest. */
  readonly seconds?: number;
}

/** What became of the sessions, and how many plans were found at fault by whom; every row is told, at 0 too. */
const none = () => ({
  sessions: { proven: 0, bounded: 0, unknown: 0, impossible: 0, refused: 0, failed: 0 },
  violations: {
    'allergen or raw food, by the checker (rule 8)': 0,
    'allergen or raw food, walked': 0,
    'cooking or cooling, by the checker (rule 9)': 0,
    'cooking through, walked': 0,
    'into the fridge, walked': 0,
    'any other rule, by the checker': 0,
  },
});
type Counts = ReturnType<typeof none>;

/** What is wrong with a plan: whom to count it under, and a sentence. */
function faultsOf(plan: Plan): readonly (readonly [keyof Counts['violations'], string])[] {
  return [
    ...checkPlan(plan).map(({ rule, message }) => {
      const by =
        rule === 8
          ? 'allergen or raw food, by the checker (rule 8)'
          : rule === 9
            ? 'cooking or cooling, by the checker (rule 9)'
            : 'any other rule, by the checker';
      return [by, `rule ${rule}: ${message}`] as const;
    }),
    ...walkThrough(plan).map((fault) => ['allergen or raw food, walked', fault] as const),
    ...walkThroughHeat(plan).map((fault) => ['cooking through, walked', fault] as const),
    ...walkToTheFridge(plan).map((fault) => ['into the fridge, walked', fault] as const),
  ];
}

/** Plans one session, and tells what is not as it should be. */
function soakOne(seed: number, { size = seed % 8 === 7 ? 2 : 1, effort, seconds }: SoakOptions, counts: Counts): void {
  const until = Date.now() + (seconds ?? 10) * 1000;
  const shouldStop = (): boolean => Date.now() > until;
  const outcome = planSession({
    ...randomSession(seed, size),
    seed: 1,
    effort: effort ?? SESSION_EFFORT,
    shouldStop,
  });
  if (outcome.kind !== 'planned') {
    counts.sessions[outcome.kind]++;
    if (outcome.kind === 'impossible')
      console.log(`${seed} impossible: ${outcome.reason} (${outcome.requirements.join('; ')})`);
    if (outcome.kind !== 'refused') return;
    const { document, path, found } = outcome.faults[0]!;
    console.log(`${seed} refused: ${document} ${path}: ${found}`);
    return;
  }
  counts.sessions[outcome.plan.status]++;
  const faults = faultsOf(outcome.plan);
  for (const by of new Set(faults.map(([by]) => by))) counts.violations[by]++;
  if (faults.length > 0) console.log(`${seed} size ${size}, ${faults.length} violations:`);
  for (const [by, told] of faults.slice(0, 5)) console.log(`   ${by}: ${told}`);
}

/**
 * Plans and checks random sessions, and prints progress with the seed to go on from.
 *
 * @param count how many, one seed each
 * @returns how many faults there were: plans at fault by the checker or a walk, refusals, and outright failures
 */
export function run(count: number, options: SoakOptions = {}): number {
  const { from = 0 } = options;
  const counts = none();
  for (let seed = from; seed < from + count; seed++) {
    try {
      soakOne(seed, options, counts);
    } catch (error) {
      counts.sessions.failed++;
      console.log(`${seed} failed: ${(error as Error).stack?.split('\n').slice(0, 4).join('\n')}`);
    }
    const done = seed + 1 - from;
    if (done % PROGRESS === 0 && done < count)
      console.log(`${done} of ${count} (go on: --from ${seed + 1} --count ${count - done}): ${inWords(counts)}`);
  }
  console.log(`${count} sessions from seed ${from}: ${inWords(counts)}`);
  const { refused, failed } = counts.sessions;
  return refused + failed + sum(counts.violations);
}

const sum = (counts: Readonly<Record<string, number>>): number =>
  Object.values(counts).reduce((total, each) => total + each, 0);

/** Counts in one line: what was planned and what not, then every kind of violation. */
function inWords({ sessions: { proven, bounded, ...rest }, violations }: Counts): string {
  const list = (of: Readonly<Record<string, number>>): string =>
    Object.entries(of)
      .map(([what, number]) => `${what} ${number}`)
      .join(', ');
  return `planned ${proven + bounded} (proven ${proven}), ${list(rest)}; violations ${sum(violations)} (${list(violations)})`;
}
