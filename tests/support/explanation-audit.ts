/** Watches every reason and every learned clause of the learning engine: as it solves a problem, and in random states of its trail. */
import { DECIDED } from '../../solver/engine/learning/trail.ts';
import { Restarts } from '../../solver/engine/learning/restarts.ts';
import { Learner } from '../../solver/engine/learning/learner.ts';
import { Model } from '../../solver/engine/learning/model/model.ts';
import type { Solution } from '../../solver/engine/outcome.ts';
import type { Problem } from '../../solver/engine/problem.ts';
import { Judge, assignmentsOf } from './explanation-judge.ts';
import { faultsOf } from './plain-check.ts';
import { seeded, type Seeded } from './seeded.ts';

const CONFLICTS = 3000;

export interface Audit {
  /** Pairs of a reason or clause and a plan. */
  readonly checked: number;
  /** Plans that the model takes for one, and those it refuses. */
  readonly known: number;
  readonly refused: number;
  readonly wrong: readonly string[];
}

/** All plans that the engine meets on its way to the proof. */
export function plansOnTheWay(problem: Problem): Solution[] {
  const learner = new Learner(problem, 3);
  const plans: Solution[] = [];
  for (let slice = 0; slice < 40 && !learner.done && !learner.impossible && !learner.model.tooLarge; slice++)
    if (learner.improve({ conflicts: CONFLICTS }) === 'improved' && learner.best !== null) plans.push(learner.best);
  return plans;
}

/**
 * Solves a problem and watches: every reason used, every clause learned, every set of assumptions said to fail together.
 *
 * @param plans solutions of the problem
 * @param slices how many turns the engine gets, each from above and once at its bound
 */
export function audit(problem: Problem, plans: readonly Solution[], slices = 10): Audit {
  const learner = new Learner(problem, 2);
  const { known, refused } = assignmentsOf(problem, plans, true);
  const judge = watched(learner.model, new Judge(learner.model, known));
  /** A tier that is a count is told as facts what the tiers above were proved to be. */
  const follow = (): void => {
    if (!learner.raisable) return;
    const left = ({ tiers }: (typeof known)[number]): boolean =>
      problem.tiers.every((_, k) => k >= learner.tier || tiers[k]! <= learner.values[k]!);
    judge.known = judge.known.filter(left);
  };
  for (let slice = 0; slice < slices && !learner.done && !learner.impossible && judge.wrong.length === 0; slice++) {
    learner.improve({ conflicts: slice < 3 ? 10 : CONFLICTS });
    follow();
    if (learner.best === null) continue;
    learner.aim(learner.bounds[learner.tier] ?? 0, { conflicts: 50 }, new Restarts());
    follow();
  }
  return {
    checked: judge.checked,
    known: known.length,
    refused,
    wrong: [...judge.wrong, ...(learner.impossible && plans.length > 0 ? ['impossible, but there are plans'] : [])],
  };
}

function watched(model: Model, judge: Judge): Judge {
  const { core } = model;
  core.reasons.audit = judge.reason;
  core.watch = (clause, size) => judge.clause([...clause.subarray(0, size)], 'a learned clause');
  const solve = core.solve.bind(core);
  core.solve = (...asked) => {
    const verdict = solve(...asked);
    const failed = core.failed.map((literal) => literal ^ core.trail.negation);
    if (verdict === 'refuted' && !core.dead && failed.length > 0) judge.clause(failed, 'a set of failed assumptions');
    return verdict;
  };
  return judge;
}

/**
 * Decides at random, lets the rest follow, and judges the reason of every bound that rose, in full and for weaker bounds, and what is learned
 * where it fails. A state without anything open must be a plan.
 *
 * @param plans solutions of the problem, best all of them
 * @param dives how often it starts from the root
 */
export function probe(problem: Problem, plans: readonly Solution[], dives: number, seed: number): Audit {
  const model = new Model(problem, false, true);
  const chance = seeded(seed);
  const { known, refused } = assignmentsOf(problem, plans, true);
  const judge = watched(model, new Judge(model, known));
  const { core } = model;
  for (let n = 0; n < dives && !core.dead && judge.wrong.length === 0; n++) {
    core.backtrack(0);
    dive(model, judge, problem, chance);
  }
  if (core.dead && known.length > 0) judge.wrong.push('refuted, but there are plans');
  return { checked: judge.checked, known: known.length, refused, wrong: judge.wrong };
}

function dive(model: Model, judge: Judge, problem: Problem, chance: Seeded): void {
  const { core } = model;
  const { trail, reasons } = core;
  for (let conflicts = 0; conflicts < 6;) {
    const from = trail.entries;
    if (!core.propagate()) {
      conflicts++;
      if (!core['learnAndJump'](-1)) return;
      continue;
    }
    for (let k = from; k < trail.entries; k++) {
      if (trail.entryReason[k] === DECIDED) continue;
      const [least, most] = [trail.entryOld[k]! + 1, trail.entryNew[k]!];
      for (const value of new Set([most, chance.int(least, most), least]))
        reasons.explain(trail.entryReason[k]!, k, trail.entrySlot[k]!, value, -1);
    }
    const open = Array.from({ length: trail.variables }, (_, x) => x).filter(
      (x) => trail.bound[2 * x]! < -trail.bound[2 * x + 1]!,
    );
    if (open.length === 0) {
      judge.wrong.push(...faultsOf(problem, model.solution()).map((fault) => `no plan: ${fault}`));
      return;
    }
    const x = chance.pick(open);
    const value = chance.int(trail.bound[2 * x]! + 1, -trail.bound[2 * x + 1]!);
    const literal = trail.literal(2 * x, value);
    core['decide'](chance.chance(0.5) ? literal : literal ^ trail.negation);
  }
}
