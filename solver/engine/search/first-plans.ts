/**
 * First plans: dives by one priority rule after the other. Tasks that made a dive fail go earlier in the next one ("squeaky wheel",
 * Joslin and Clements 1999), and what soils more goes later in every other round. Until there is a plan most dives go from the end back.
 */
import type { Plan } from './plan.ts';
import { priorityRules, type PriorityRule } from './priority-rules.ts';
import type { RuleDive, Workshop } from './workshop.ts';

/**
 * Dead ends allowed in the first dive: where one forward dive gives a plan, it meets few of them; where it meets more, most of the time
 * dives from the end back are sooner.
 */
const FEW_FAILS = 4;
const TASKS_A_FAIL = 40;
/** Rounds in which what tasks there are is not left to chance. */
const STEADY = 6;
/** Dead ends allowed in the second dive; later ones are allowed a few more each. */
const FAILS = 26;
/** While there is no plan one dive in so many goes forward: for the same work, three times as many of those from the end back give one (one oven, one cook). */
const FORWARD_ONE_IN = 6;

const forwardRules = priorityRules.filter(({ direction }) => direction === 'forward');
const backwardRules = alternating(
  priorityRules.filter(({ direction }) => direction === 'backward'),
  'latest finish',
);

/** The others in their order, each after the rule of that measure: by latest finish a first plan takes a quarter less work (one cook, 60 seeds). */
function alternating(rules: readonly PriorityRule[], measure: PriorityRule['measure']): readonly PriorityRule[] {
  const often = rules.filter((rule) => rule.measure === measure);
  return rules.filter((rule) => rule.measure !== measure).flatMap((rule) => [...often, rule]);
}

/**
 * The rule of a round: all in their order once there is a plan, before that most often one from the end back.
 *
 * @param round from 0
 */
export function ruleOf(round: number, hasPlan: boolean): PriorityRule {
  if (hasPlan) return priorityRules[round % priorityRules.length] as PriorityRule;
  const turn = Math.floor(round / FORWARD_ONE_IN);
  return round % FORWARD_ONE_IN === 0
    ? (forwardRules[turn % forwardRules.length] as PriorityRule)
    : (backwardRules[(round - turn - 1) % backwardRules.length] as PriorityRule);
}

/**
 * Dives until a plan is found and `rounds` rules were tried, or the budget is spent.
 *
 * @param rounds how many rules to try at least
 * @param most how many to try at most, where none gives a plan
 * @param effort most units to spend in all once there is a plan; the dive that gives it is brought to its end
 */
export function findFirstPlans(workshop: Workshop, rounds: number, most: number, effort: number): void {
  const { budget } = workshop;
  const wheel = new SqueakyWheel(workshop, false);
  for (let round = 0; round < most && !budget.poll() && !budget.over(); round++) {
    if (round >= rounds && workshop.best !== null) return;
    const rule = ruleOf(round, workshop.best !== null);
    wheel.turn(rule, round, {
      whim: round < 12 ? 0 : 15,
      soilWeight: round % 2 === 1 ? workshop.compiled.horizon : 0,
      shapeWhim: round < STEADY ? 0 : 50,
      strides: workshop.best === null,
    });
    if (workshop.best !== null) budget.limitTo(effort);
  }
}

/** Dives by one rule alone until it gives a plan, `most` times at most. */
export function findPlanByRule(workshop: Workshop, rule: PriorityRule, most: number): Plan | null {
  const wheel = new SqueakyWheel(workshop, true);
  for (let round = 0; round < most && !workshop.budget.poll() && !workshop.budget.over(); round++) {
    const plan = wheel.turn(rule, round, { whim: round < 4 ? 0 : 10, shapeWhim: round < 4 ? 0 : 30 });
    if (plan !== null) return plan;
  }
  return null;
}

class SqueakyWheel {
  private readonly boost: Float64Array;

  /**
   * @param keeps whether trouble of all dives before counts. By one rule it has to, or the dives go round in a circle; by rules that
   *   change, trouble of an order that is gone only makes them more alike
   */
  constructor(
    private readonly workshop: Workshop,
    private readonly keeps: boolean,
  ) {
    this.boost = new Float64Array(workshop.compiled.taskCount);
  }

  turn(rule: PriorityRule, round: number, ways: Omit<RuleDive, 'failLimit' | 'boost'>): Plan | null {
    const { compiled, structure, dive, budget } = this.workshop;
    const { boost } = this;
    const { start, items } = structure.blockTasks;
    dive.forget();
    const failLimit =
      round === 0
        ? Math.max(FEW_FAILS, Math.floor(compiled.taskCount / TASKS_A_FAIL))
        : FAILS + 4 * Math.min(20, round);
    const plan = this.workshop.planByRule(rule, { ...ways, failLimit, boost });
    const share = plan !== null ? 0.7 : this.keeps ? 1 : 0;
    for (let task = 0; task < boost.length; task++) boost[task] = (boost[task] as number) * share;
    for (let task = 0; task < boost.length && plan === null; task++) {
      if (dive.trouble[task] === 0) continue;
      const block = structure.block[task] as number;
      for (let k = start[block] as number; k < (start[block + 1] as number); k++) {
        const other = items[k] as number;
        boost[other] = (boost[other] as number) + compiled.horizon / 20;
      }
    }
    budget.spend(50);
    return plan;
  }
}
