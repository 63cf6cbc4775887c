/** Ways of spoiling a plan, for plans broken in just one way. */
import type { Component } from '../../solver/kitchen/component.ts';
import type { Plan, PlannedStep } from '../../solver/kitchen/plan.ts';
import type { Step } from '../../solver/kitchen/step.ts';
import type { RuleNumber } from '../../solver/checker/violation.ts';

export interface BrokenPlan {
  /** What is wrong, as the end of "a plan in which …". */
  readonly name: string;
  readonly rule: RuleNumber;
  /** Breaks a copy of the plan in place. */
  readonly change: (plan: Plan) => void;
  /** The figures are left as they were, wrong or not. */
  readonly keepTotals?: boolean;
}

export function stepOf(plan: Plan, id: string): PlannedStep {
  const found = plan.steps.find((step) => step.id === id);
  if (found === undefined) throw new Error(`no planned step ${id}`);
  return found;
}

export function drop(plan: Plan, id: string): void {
  plan.steps.splice(plan.steps.indexOf(stepOf(plan, id)), 1);
}

/** Moves a step with its segments and places by some minutes. */
export function shift(step: PlannedStep, minutes: number): void {
  step.start += minutes;
  step.end += minutes;
  for (const segment of step.segments) {
    segment.start += minutes;
    segment.end += minutes;
  }
  for (const place of step.places) {
    place.from += minutes;
    place.until += minutes;
  }
}

/** Sets the bounds of a step's segments: the n-th begins at the n-th minute and ends at the next; its places end with it. */
export function retime(step: PlannedStep, ...minutes: readonly number[]): void {
  const before = step.end;
  const segments = step.segments.filter(({ check }) => check !== true);
  segments.forEach((segment, index) => {
    segment.start = minutes[index]!;
    segment.end = minutes[index + 1]!;
  });
  for (const place of step.places) {
    if (place.from === step.start) place.from = minutes[0]!;
    if (place.until === before) place.until = minutes.at(-1)!;
  }
  step.start = minutes[0]!;
  step.end = minutes.at(-1)!;
}

export function componentOf(plan: Plan, id: string): Component {
  const found = plan.components.find((component) => component.id === id);
  if (found === undefined) throw new Error(`no component ${id}`);
  return found;
}

/** A step as the component's document has it, by `component/step`. */
export function recipeStep(plan: Plan, id: string): Step {
  const [component, step] = id.split('/');
  const found = componentOf(plan, component!).steps.find((each) => each.id === step);
  if (found === undefined) throw new Error(`no step ${id}`);
  return found;
}
