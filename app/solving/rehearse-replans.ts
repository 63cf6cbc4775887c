/**
 * Replans a plan for nothing, at moments all through it and with news of every kind, so that the code is compiled before a cook waits for
 * an answer. All news is invented. Nothing is kept of it: what is asked afterwards is answered as it would be without.
 */
import type { LiveEvent } from '../../solver/answers/replan/events.ts';
import type { RunningPlan } from '../../solver/answers/replan/replan.ts';
import type { PlannedStep } from '../../solver/kitchen/plan.ts';

/** Moments of a whole rehearsal, most steps that each has news of, and minutes that what is late takes longer. */
const MOMENTS = 10;
const STEPS = 2;
const LATE = [4, 12] as const;

/**
 * Rehearses the replans of a running plan: with 60 steps and ten moments some seventy of them. It is for while a thread has nothing else
 * to do, as when the cooks have just begun.
 *
 * @param shouldStop asked before each and by each; true ends it at once
 * @param moments how many, evenly over the plan, at least 1
 * @param turn from 0 to less than 1: where between two moments of turn 0 those of this one lie
 * @returns whether it came to its end
 */
export function rehearseReplans(running: RunningPlan, shouldStop: () => boolean, moments = MOMENTS, turn = 0): boolean {
  const work = running.plan.steps.filter(({ kind }) => kind !== 'preheat');
  // A session with a table time may begin long after its first minute.
  const first = Math.min(...work.map(({ start }) => start));
  for (let moment = 0; moment < moments; moment++) {
    const share = (moment + turn) / moments;
    const now = 1 + first + Math.round((running.plan.allAwayMinutes - first) * share);
    for (const event of newsAt(work, now)) {
      if (shouldStop()) return false;
      running.replan({ now, events: [event], shouldStop });
    }
  }
  return true;
}

/** What a cook might tell at a minute, each to be told alone. */
function newsAt(work: readonly PlannedStep[], now: number): readonly LiveEvent[] {
  const underWay = work.filter(({ start, end }) => start < now && now < end).slice(0, STEPS);
  const begun = work.filter(({ start }) => start < now && start >= now - 2).slice(0, 1);
  return [
    ...underWay.flatMap(({ id, end }): readonly LiveEvent[] => [
      ...LATE.map((late) => ({ kind: 'late', step: id, remaining: end - now + late }) as const),
      { kind: 'late', step: id, remaining: (end - now) >> 1 },
      { kind: 'done', step: id, at: now },
    ]),
    ...begun.map(({ id }): LiveEvent => ({ kind: 'waiting', step: id })),
  ];
}
