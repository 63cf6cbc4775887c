/**
 * Running sessions of which cooks tell one thing after another, at rising minutes: late, shorter, done, not begun, left out, begun or done
 * out of turn. Each plan that a replan offers is gone on by. Whatever is told, a replan answers, and what the checker finds in its plan it has
 * told. All invented.
 */
import type { LiveEvent } from '../../solver/answers/replan/events.ts';
import { runPlan } from '../../solver/answers/replan/replan.ts';
import { checkPlan } from '../../solver/checker/check-plan.ts';
import type { Plan } from '../../solver/kitchen/plan.ts';
import type { Seeded } from './seeded.ts';

/** Most minutes between two things told. */
const MOST_BETWEEN = 12;
/** Work units of a replan: to be safe a plan need not be good. */
const EFFORT = 1_000;

/** What came of chains. */
export interface ChainCounts {
  replans: number;
  /** Not what a cook could tell of that step. */
  refused: number;
  /** Where there was none to go on by, the plan before is gone on by. */
  withoutPlan: number;
  /** Plans that tell of something broken. */
  broken: number;
}

export const noChains = (): ChainCounts => ({ replans: 0, refused: 0, withoutPlan: 0, broken: 0 });

/** One thing that a cook may tell at a minute; null: nothing of the kind drawn is under way or due. */
function news(plan: Plan, now: number, chance: Seeded): LiveEvent | null {
  const work = plan.steps.filter(({ kind }) => kind !== 'preheat');
  const running = work.filter(({ start, end }) => start < now && end > now);
  const due = work.filter(({ start }) => start <= now && start >= now - 3);
  const ahead = work.filter(({ start }) => start >= now);
  const one = <T>(list: readonly T[], tell: (item: T) => LiveEvent): LiveEvent | null =>
    list.length === 0 ? null : tell(chance.pick(list.slice(0, 6)));
  switch (chance.pick(['late', 'late', 'shorter', 'done', 'waiting', 'skipped', 'started', 'done early'] as const)) {
    case 'late':
      return one(running, ({ id, end }) => ({ kind: 'late', step: id, remaining: end - now + chance.int(1, 20) }));
    case 'shorter':
      return one(running, ({ id, end }) => ({ kind: 'late', step: id, remaining: chance.int(0, end - now) }));
    case 'done':
      return one(running, ({ id }) => ({ kind: 'done', step: id, at: now - chance.int(0, 1) }));
    case 'waiting':
      return one(due, ({ id }) => ({ kind: 'waiting', step: id }));
    case 'skipped':
      return one(ahead, ({ id }) => ({ kind: 'skipped', step: id }));
    case 'started':
      return one(ahead, ({ id }) => ({ kind: 'started', step: id, at: now - chance.int(0, 2) }));
    case 'done early':
      return one(ahead, ({ id }) => ({ kind: 'done', step: id, at: now - chance.int(0, 2) }));
  }
}

/**
 * Lives through a session with a few things told.
 *
 * @param chance decides when what is told
 * @returns what is wrong, each with all that was told up to then: a replan that threw, or a plan in which the checker finds what was not told
 */
export function liveThrough(plan: Plan, chance: Seeded, counts: ChainCounts): readonly string[] {
  const faults: string[] = [];
  const told: string[] = [];
  let going = plan;
  let now = chance.int(1, Math.max(1, plan.allAwayMinutes >> 1));
  for (let left = chance.int(2, 4); left > 0; left--, now += chance.int(1, MOST_BETWEEN)) {
    const event = news(going, now, chance);
    if (event === null) continue;
    told.push(`at ${now} ${JSON.stringify(event)}`);
    const fault = (what: string): number => faults.push(`${what}; ${told.join(', ')}`);
    try {
      const next = goOn(going, now, event, counts, fault);
      if (next === null) told.push('no plan to go on by');
      else going = next;
    } catch (error) {
      fault(`threw ${(error as Error).message}`);
      break;
    }
  }
  return faults;
}

function goOn(
  plan: Plan,
  now: number,
  event: LiveEvent,
  counts: ChainCounts,
  fault: (what: string) => unknown,
): Plan | null {
  const result = runPlan(plan).replan({ now, events: [event], effort: EFFORT });
  counts.replans++;
  if (result.kind === 'refused') {
    counts.refused++;
    return plan;
  }
  const next = result.kind === 'replanned' ? result.plan : result.leastBad;
  if (next === null) {
    counts.withoutPlan++;
    return null;
  }
  const known = new Set(result.broken.map(({ message }) => message));
  if (known.size > 0) counts.broken++;
  for (const { message } of checkPlan(next)) if (!known.has(message)) fault(`not told: ${message}`);
  return next;
}
