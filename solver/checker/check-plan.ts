/**
 * The independent checker: a plan is read against its own frozen session, kitchen and components, and held to the ten rules that
 * make a plan valid. It knows the facts of the kitchen and nothing of how plans are found.
 */
import type { Plan } from '../kitchen/plan.ts';
import { checkAfterheat } from './afterheat.ts';
import type { WallOffset } from './clock.ts';
import { checkHands } from './hands.ts';
import { checkOrder } from './order.ts';
import { checkOvens } from './oven.ts';
import { checkPins } from './pins.ts';
import { checkPlaces } from './places.ts';
import { checkPower } from './power.ts';
import { readPlan, type Reading } from './reading.ts';
import { checkRoomAndAbsences } from './room.ts';
import { checkSafety } from './safety.ts';
import { checkSoil } from './soil.ts';
import { checkStepsThere } from './steps-there.ts';
import { checkTotals } from './totals.ts';
import type { Violation } from './violation.ts';
import { checkWater } from './water.ts';

const RULES: readonly ((reading: Reading) => readonly Violation[])[] = [
  checkStepsThere,
  checkTotals,
  checkOrder,
  checkHands,
  checkPower,
  checkPlaces,
  checkRoomAndAbsences,
  checkOvens,
  checkAfterheat,
  checkWater,
  checkSoil,
  checkSafety,
  checkPins,
];

export interface CheckOptions {
  /** Minutes from the session's start to a clock time some days away; absent: days of 24 hours. */
  readonly wallOffset?: WallOffset;
}

/**
 * All that is wrong with a plan.
 *
 * @param plan a plan that its schema accepted
 * @returns every violation, by rule; empty: the plan is valid
 */
export function checkPlan(plan: Plan, options: CheckOptions = {}): readonly Violation[] {
  const reading = readPlan(plan, options.wallOffset);
  return RULES.flatMap((check) => check(reading)).sort((a, b) => a.rule - b.rule);
}
