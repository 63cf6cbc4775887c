/** Plans written by hand, in few words. Minutes are from the start of the session. */
import type { Component } from '../../solver/kitchen/component.ts';
import type { Kitchen } from '../../solver/kitchen/kitchen.ts';
import type { PlaceKind, Plan, PlannedPlace, PlannedSegment, PlannedStep } from '../../solver/kitchen/plan.ts';
import type { Session } from '../../solver/kitchen/session.ts';

export const on = (
  person: string,
  start: number,
  end: number,
  extra: Partial<PlannedSegment> = {},
): PlannedSegment => ({ hands: 'on', person, start, end, ...extra });

export const off = (start: number, end: number): PlannedSegment => ({ hands: 'off', start, end });

export const place = (
  kind: PlaceKind,
  id: string,
  from: number,
  until: number,
  extra: Partial<PlannedPlace> = {},
): PlannedPlace => ({ kind, id, from, until, amount: 1, ...extra });

const KINDS: Readonly<Record<string, PlannedStep['kind']>> = { boxes: 'packing', clearing: 'clearing' };

/**
 * A planned step.
 *
 * @param id such as `rolls/shape.2`; its component, step and batch are read from it
 * @param portions of the batch; absent for added work
 */
export function step(
  id: string,
  portions: number | undefined,
  segments: readonly PlannedSegment[],
  places: readonly PlannedPlace[] = [],
  extra: Partial<PlannedStep> = {},
): PlannedStep {
  const [, component, name, batch] = /^([a-z0-9-]+)\/([a-z0-9-]+)(?:\.(\d))?/.exec(id)!;
  return {
    id,
    kind: KINDS[component!] ?? 'step',
    component: component!,
    step: name!,
    name: name!,
    batch: Number(batch ?? 1),
    ...(portions === undefined ? {} : { portions }),
    alternative: 0,
    start: Math.min(...segments.map(({ start }) => start)),
    end: Math.max(...segments.map(({ end }) => end)),
    segments: [...segments],
    places: [...places],
    inFinish: true,
    ...extra,
  };
}

/** A wash at the sink of a thing, or without a kind of thing, of the person's hands. */
export function wash(person: string, kind: PlaceKind | null, id: string, start: number, end: number): PlannedStep {
  const things = kind === null ? [] : [place(kind, id, start, end)];
  return step(`wash/${id}.1`, undefined, [on(person, start, end)], [place('sink', 'sink', start, end), ...things], {
    kind: 'wash',
    component: id,
    step: 'wash',
    batch: 1,
  });
}

/** Work on a pool's water. */
export function water(pool: string, what: string, person: string, start: number, end: number): PlannedStep {
  const sink = what === 'empty' || what === 'change' ? [place('sink', 'sink', start, end)] : [];
  return step(`${pool}/${what}`, undefined, [on(person, start, end)], sink, { kind: 'water' });
}

/** Sums up the figures of a plan from its steps. */
export function withTotals(plan: Plan): Plan {
  const handsOn = plan.steps.flatMap(({ segments, inFinish }) =>
    segments.filter(({ hands }) => hands === 'on').map((segment) => ({ ...segment, inFinish })),
  );
  return {
    ...plan,
    finishMinutes: Math.max(0, ...handsOn.filter(({ inFinish }) => inFinish).map(({ end }) => end)),
    allAwayMinutes: Math.max(0, ...plan.steps.map(({ end }) => end)),
    handsOnMinutes: handsOn.reduce((sum, { start, end }) => sum + end - start, 0),
  };
}

/** A plan of these documents, cooked by everybody in the session. */
export function planOf(
  documents: { readonly session: Session; readonly kitchen: Kitchen; readonly components: readonly Component[] },
  parts: Partial<Plan>,
): Plan {
  const { session, kitchen, components } = documents;
  return withTotals({
    kind: 'plan',
    version: 1,
    id: 'by-hand',
    name: 'Written by hand',
    start: session.start,
    session,
    kitchen,
    components: [...components],
    crew: session.people.map(({ id }) => id),
    intent: 'soonest',
    made: { seed: 0, effort: 0 },
    status: 'bounded',
    stopped: false,
    tiers: [],
    finishMinutes: 0,
    boundMinutes: 0,
    allAwayMinutes: 0,
    handsOnMinutes: 0,
    steps: [],
    holds: [],
    ovens: [],
    pools: [],
    ahead: [],
    later: [],
    ...parts,
  });
}
