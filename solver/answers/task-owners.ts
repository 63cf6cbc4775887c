/** Which planned step, or which thing of the kitchen, each point of the scheduling problem belongs to. */
import type { Point } from '../engine/problem.ts';
import type { Plan, PlannedStep } from '../kitchen/plan.ts';
import type { StepLegend, Translated } from '../translate/legend.ts';
import { the } from './the.ts';

export type Owner =
  | { readonly kind: 'step'; readonly step: PlannedStep }
  /** Something that goes on for a time and is no step; `doing` says what, as a sentence without its stop; `of` is the pool's or oven's id. */
  | { readonly kind: 'thing'; readonly id: string; readonly doing: string; readonly of?: string };

/**
 * The owners of a plan's points.
 *
 * @param plan the solution read back
 * @returns the owner of a point; null for a task that belongs to nothing in the plan
 */
export function ownersOf(
  { translation: t }: Translated,
  plan: Plan,
): (point: Exclude<Point, 'origin'>) => Owner | null {
  const steps = new Map(plan.steps.map((step) => [step.id, step]));
  const starts = new Map<string, Owner>();
  const ends = new Map<string, Owner>();
  const own = (task: string, first: Owner | undefined, last = first): void => {
    if (first !== undefined) starts.set(task, first);
    if (last !== undefined) ends.set(task, last);
  };
  const planned = (id: string): Owner | undefined => {
    const step = steps.get(id);
    return step === undefined ? undefined : { kind: 'step', step };
  };

  for (const legend of t.steps) {
    const { id } = legend.instance;
    if (legend.pieces.length > 0) {
      // Several pieces, numbered in the plan as they are in the problem, or the whole in one.
      const whole = planned(id);
      const pieces = legend.pieces.map((_, index) => whole ?? planned(`${id}~${index + 1}`));
      const last = pieces.findLast((piece) => piece !== undefined);
      legend.pieces.forEach((piece, index) => own(piece.task, pieces[index]));
      for (const task of spansOf(legend)) own(task, pieces[0], last);
    } else {
      const owner = planned(id);
      for (const task of spansOf(legend)) own(task, owner);
      for (const operation of legend.shapes.flatMap((shape) => shape.operations.flat())) own(operation.task, owner);
    }
  }
  for (const wash of t.washes) own(wash.task, planned(wash.task));
  for (const { pool, span, boils, empty } of t.pools) {
    own(empty.task, planned(`${pool.id}/empty`));
    boils.forEach((boil, index) => {
      const number = index + 1;
      if (boil.fill !== null) own(boil.fill.task, planned(`${pool.id}/fill`));
      if (boil.again !== null) own(boil.again.task, planned(`${pool.id}/reboil.${number}`));
      if (boil.fresh !== null) own(boil.fresh.task, planned(`${pool.id}/change.${number}`));
      own(boil.heat, { kind: 'thing', id: boil.heat, doing: `${the(pool.name)} comes to the boil`, of: pool.id });
    });
    const kept: Owner = { kind: 'thing', id: pool.id, doing: `${pool.name} keeps its pan and burner` };
    for (const task of [span, `${pool.id}/burner`]) own(task, kept);
  }
  for (const { oven, fire } of t.ovens) {
    const on: Owner = { kind: 'thing', id: fire, doing: `${oven.name} is on`, of: oven.id };
    own(fire, planned(`${oven.id}/preheat`) ?? on, on);
  }
  for (const { task, instance, choice, options } of t.holds) {
    const thing = choice === null ? (options[0]?.place.kind ?? 'thing') : instance.need.use;
    own(task, { kind: 'thing', id: task, doing: `${instance.component.name} keeps its ${thing}` });
  }
  return (point) => {
    const found = (point.at === 'start' ? starts : ends).get(point.task);
    if (found !== undefined) return found;
    // A mirror of a place in the oven, which keeps drips off, is named for the place's own task.
    const [place] = point.task.split('/drips:');
    return (point.at === 'start' ? starts : ends).get(place!) ?? null;
  };
}

/** Tasks of a step besides its hands-on work: the step as a whole, its places, and moments that no hand marks. */
const spansOf = (legend: StepLegend): readonly string[] => [
  legend.key,
  ...legend.needs.map((need) => need.task),
  ...legend.shapes.flatMap((shape) => shape.boundaries.flatMap((point) => (point === 'origin' ? [] : [point.task]))),
];

export const sameOwner = (a: Owner | null, b: Owner | null): boolean => {
  if (a === null || b === null) return a === b;
  if (a.kind === 'step') return b.kind === 'step' && a.step.id === b.step.id;
  return b.kind === 'thing' && a.id === b.id;
};
