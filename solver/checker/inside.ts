/** Which steps of a recipe have their food in what a use holds. */
import type { Step } from '../kitchen/step.ts';
import type { Use } from './reading.ts';

/** Steps whose food is in what a use holds: its own step, or those of a hold from its first to its last as the recipe has them. */
export function stepsInside(use: Use): readonly Step[] {
  if (use.step !== null) return [use.step.instance.step];
  const { component, hold } = use.hold!.instance;
  const ends = [hold.from, hold.to].map((id) => component.steps.findIndex((step) => step.id === id));
  return component.steps.slice(Math.min(...ends), Math.max(...ends) + 1);
}
