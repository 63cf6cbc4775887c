/**
 * Plans and solves small things for nothing, so that the code is compiled before somebody waits for it: the demo's smallest session from
 * document to checked plan and replanned once while it runs, and problems that between them touch all of the engine.
 *
 * Work is counted, so it ends by itself. Nothing is kept of it: what is planned afterwards is what would be planned without.
 */
import * as v from 'valibot';
import { runPlan } from '../../solver/answers/replan/replan.ts';
import { solveTogether } from '../../solver/engine/together.ts';
import { Component } from '../../solver/kitchen/component.ts';
import { Kitchen } from '../../solver/kitchen/kitchen.ts';
import { Session } from '../../solver/kitchen/session.ts';
import apples from '../demo/components/apple-cress.component.json' with { type: 'json' };
import gravy from '../demo/components/cider-gravy.component.json' with { type: 'json' };
import pork from '../demo/components/mustard-pork.component.json' with { type: 'json' };
import swede from '../demo/components/crushed-swede.component.json' with { type: 'json' };
import kitchen from '../demo/kitchens/lane-cottage.kitchen.json' with { type: 'json' };
import session from '../demo/sessions/weeknight-roast.session.json' with { type: 'json' };
import type { PlanJob } from './job.ts';
import { rehearseReplans } from './rehearse-replans.ts';
import { runJob } from './run-job.ts';
import { wallOffsetOf } from './wall-offset.ts';
import { warmUpProblems } from './warm-up-problems.ts';

/**
 * How often all is done, each time with other problems, and most work units for each: together some four seconds on one core. Many short rounds have
 * the compiler see more first plans than few long ones (the demo's largest session: 137 ms to the first plan with 4 of 2,000, 120 with these).
 */
const ROUNDS = 8;
const PROBLEM_UNITS = 1000;
const SESSION_UNITS = 1500;
/**
 * Moments at which the session is replanned, in the first round alone: code that the compiler has last seen replan gives a first plan later
 * (with three moments in every round 240 ms on the demo's largest session, 140 with one or none).
 */
const MOMENTS = 1;

/**
 * Runs planner and engine warm.
 *
 * @param shouldStop asked every few milliseconds; true ends it at once, for whoever waits is not to wait for this
 * @returns whether it came to its end
 */
export function warmUp(shouldStop: () => boolean): boolean {
  const job: PlanJob = {
    session: v.parse(Session, session),
    kitchen: v.parse(Kitchen, kitchen),
    components: [apples, gravy, pork, swede].map((component) => v.parse(Component, component)),
    seed: 1,
    effort: SESSION_UNITS,
  };
  for (let seed = 1; seed <= ROUNDS; seed++) {
    for (const problem of warmUpProblems(seed)) {
      if (shouldStop()) return false;
      solveTogether(problem, { seed, effort: PROBLEM_UNITS, shouldStop });
    }
    if (shouldStop()) return false;
    const made = runJob(job, { shouldStop, onProgress: () => {}, now: () => performance.now() });
    if (made.kind !== 'planned' || shouldStop()) return false;
    if (seed > 1) continue;
    const running = runPlan(made.plan, wallOffsetOf(job.session.start));
    if (!rehearseReplans(running, shouldStop, MOMENTS, 0.5)) return false;
  }
  return true;
}
