/** What is going on at a minute: who has a hand on what, what goes by itself, and what comes next. */
import type { Plan, PlannedStep } from '../../../solver/kitchen/plan.ts';
import { componentOwners, ownerOf, type Owner } from './identity.ts';
import { personName } from './kitchen-names.ts';
import { stepName } from './step-words.ts';

export interface Doing {
  readonly stepId: string;
  readonly owner: Owner;
  readonly words: string;
  readonly start: number;
  readonly end: number;
}

export interface PersonNow {
  readonly person: string;
  readonly name: string;
  readonly now: Doing | null;
  readonly next: Doing | null;
}

export interface NowNext {
  readonly people: readonly PersonNow[];
  /** Goes by itself now, what ends first at the top. */
  readonly byItself: readonly Doing[];
  /** Turns of an oven's dial still to come, the first of each oven. */
  readonly dials: readonly { readonly minute: number; readonly words: string }[];
}

const doing = (plan: Plan, owner: Owner, step: PlannedStep, segment: PlannedStep['segments'][number]): Doing => ({
  stepId: step.id,
  owner,
  words: segment.name === undefined ? stepName(plan, step) : `${stepName(plan, step)}: ${segment.name}`,
  start: segment.start,
  end: segment.end,
});

/** @param minute of the plan; a segment is on from its start to just before its end */
export function nowNext(plan: Plan, minute: number): NowNext {
  const owners = componentOwners(plan);
  const all = plan.steps.flatMap((step) => {
    const owner = ownerOf(step, owners);
    return step.segments.map((segment) => ({ segment, doing: doing(plan, owner, step, segment) }));
  });
  const on = (each: { readonly start: number; readonly end: number }): boolean =>
    each.start <= minute && minute < each.end;
  const people = plan.crew.map((person): PersonNow => {
    const own = all
      .filter(({ segment }) => segment.hands === 'on' && segment.person === person)
      .map((each) => each.doing)
      .sort((a, b) => a.start - b.start);
    return {
      person,
      name: personName(plan, person),
      now: own.find(on) ?? null,
      next: own.find((each) => each.start > minute) ?? null,
    };
  });
  const dials = plan.ovens.flatMap((programme) => {
    const next = programme.settings.find((setting) => setting.minute > minute);
    if (next === undefined) return [];
    const name = plan.kitchen.ovens.find((oven) => oven.id === programme.oven)?.name ?? programme.oven;
    return [{ minute: next.minute, words: next.celsius === null ? `${name} off` : `${name} to ${next.celsius} °C` }];
  });
  return {
    people,
    byItself: all
      .filter(({ segment }) => segment.hands === 'off' && on(segment))
      .map((each) => each.doing)
      .sort((a, b) => a.end - b.end),
    dials,
  };
}
