/** A session, cooked by a crew in a kitchen, as a food-free scheduling problem. */
import type { Component } from '../kitchen/component.ts';
import { dishesOf, expandDish, expandHolds, type Dish, type StepInstance } from '../kitchen/expand.ts';
import type { InputFault } from '../kitchen/fault.ts';
import type { Kitchen } from '../kitchen/kitchen.ts';
import type { SafetyRules } from '../kitchen/safety-rules.ts';
import type { Intent, Session } from '../kitchen/session.ts';
import { onceForBoth, onceOn } from '../kitchen/once.ts';
import { minutesDown } from '../kitchen/scaling.ts';
import { durationMinutes } from '../kitchen/values.ts';
import { methodFaults } from '../safety/method-faults.ts';
import { rulesInForce } from '../safety/rules-in-force.ts';
import { bindBoiling } from './boiling.ts';
import { declareHands } from './hands.ts';
import { addHold, fitPansToBurners } from './holds.ts';
import type { Met, Translated, Translation } from './legend.ts';
import { giveEachItsOwn } from './own-things.ts';
import { addAbsences, addAhead, addFridge, addHotHolds, addOrders, addPins, addTable } from './orders.ts';
import { addOvens } from './ovens.ts';
import { declarePlaces } from './places.ts';
import { addPools, declarePools } from './pools.ts';
import { declarePower } from './power.ts';
import { ProblemBuilder } from './problem-builder.ts';
import { addCoolingStages, addRests, roastedAsAsked } from './safety.ts';
import { addStep } from './steps.ts';
import { bindRecovery } from './recovery.ts';
import { addTiers } from './tiers.ts';
import { addWashes } from './washes.ts';

export interface SessionInput {
  readonly session: Session;
  readonly kitchen: Kitchen;
  /** At least the components that the session names. */
  readonly components: readonly Component[];
  /** Id of one of the session's crews; absent: its first, or everybody. */
  readonly crew?: string;
  /** Absent: the session's own, else soonest. */
  readonly intent?: Intent;
  /** The safety rules in force; absent: the built-in ones that the session names, else the strictest of them. */
  readonly rules?: SafetyRules;
  /** Minutes from the session's start to a clock time some days away; absent: days of 24 hours, no change of clocks between. */
  readonly wallOffset?: (days: number, clock: string) => number;
  /** What would be otherwise in a step of a batch, such as a shorter length; absent: nothing. */
  readonly adjust?: (instance: StepInstance) => StepInstance;
  /** By component id, the one split into batches that is asked for; absent: every way of splitting is open. */
  readonly splits?: ReadonlyMap<string, readonly number[]>;
  /** Every use keeps its choice of things, also where each could have one to itself. */
  readonly openThings?: boolean;
  /** By component id, allergens that it has met and carries from now on, though it should have stayed free of them. */
  readonly met?: Met;
  /** By id of a thing or a person: washes that are offered at least, since a plan to be followed has them. */
  readonly washed?: ReadonlyMap<string, number>;
}

export type ProblemAnswer =
  ({ readonly ok: true } & Translated) | { readonly ok: false; readonly faults: readonly InputFault[] };

/** Offset of a clock time when every day has 24 hours. */
export function plainWallOffset(session: Session): (days: number, clock: string) => number {
  const minutes = (clock: string): number => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3, 5));
  const start = minutes(session.start.local.slice(11));
  return (days, clock) => days * 1440 + minutes(clock) - start;
}

/**
 * Translates a session.
 *
 * @returns the problem with the legend to read its solutions by, or every fault that keeps the session from being cooked
 */
export function sessionToProblem(input: SessionInput): ProblemAnswer {
  const { session, kitchen, components } = input;
  const inForce = input.rules === undefined ? rulesInForce(session.authority, [], `session ${session.id}`) : null;
  if (inForce?.ok === false) return inForce;
  const rules = input.rules ?? inForce!.rules;
  const read = dishesOf(session, components);
  const { dishes: heeded, faults } = heededBy(rules, read)(session, kitchen.roomC);
  const dishes = heeded.map((dish) => {
    const split = input.splits?.get(dish.component.id);
    return split === undefined ? dish : splitAs(dish, split.join(' '));
  });
  const all = [...read.faults, ...unknownCrew(input), ...faults];
  if (all.length > 0) return { ok: false, faults: all };

  const crew =
    input.crew === undefined ? session.crews?.[0] : session.crews?.find((candidate) => candidate.id === input.crew);
  const t: Translation = {
    session,
    kitchen,
    components,
    crew: crew === undefined ? session.people : session.people.filter((person) => crew.people.includes(person.id)),
    rules,
    ...(input.met === undefined ? {} : { met: input.met }),
    intent: input.intent ?? session.intent ?? 'soonest',
    wallOffset: input.wallOffset ?? plainWallOffset(session),
    builder: new ProblemBuilder(session.id, minutesDown(durationMinutes(session.longest))),
    steps: [],
    holds: [],
    washes: [],
    pools: [],
    ovens: [],
    ovenClasses: new Map(),
    faults: [],
  };
  declareHands(t);
  declarePlaces(t);
  declarePower(t);
  declarePools(t);
  for (const dish of dishes) {
    const choice = t.builder.choice(
      `split:${dish.component.id}`,
      dish.splits.map((split) => split.join(' + ')),
    );
    const once = new Set<string>();
    dish.splits.forEach((split, option) => {
      for (const expanded of expandDish(dish, split)) {
        const instance = input.adjust?.(expanded) ?? expanded;
        if (!instance.batched && once.has(instance.id)) continue;
        once.add(instance.id);
        const legend = addStep(t, dish, instance, { choice, option });
        if (legend !== null) t.steps.push(legend);
      }
    });
    const held = new Set<string>();
    dish.splits.forEach((split, option) => {
      for (const hold of expandHolds(dish, split)) {
        if (!hold.batched && held.has(hold.hold.id)) continue;
        held.add(hold.hold.id);
        addHold(t, dish, hold, { choice, option });
      }
    });
  }
  if (input.openThings !== true) giveEachItsOwn(t);
  fitPansToBurners(t);
  bindBoiling(t);
  bindRecovery(t);
  addOvens(t);
  addPools(t);
  addOrders(t);
  addAhead(t);
  addFridge(t);
  addRests(t);
  addCoolingStages(t);
  addTable(t);
  addHotHolds(t);
  addPins(t);
  addAbsences(t);
  addWashes(t, input.washed);
  addTiers(t);
  return t.faults.length > 0
    ? { ok: false, faults: t.faults }
    : { ok: true, problem: t.builder.build(), translation: t };
}

/** Dishes with what the rules ask of their roasting, and what of them no plan could keep the rules by. */
const heededBy = onceForBoth((rules: SafetyRules, { dishes }: ReturnType<typeof dishesOf>) =>
  onceOn((session: Session, roomC: number) => ({
    dishes: dishes.map((dish): Dish => ({ ...dish, component: roastedAsAsked(dish.component, rules) })),
    faults: methodFaults(
      session,
      dishes.map((dish) => dish.component),
      rules,
      roomC,
    ),
  })),
);

const splitAs = onceOn((dish: Dish, sizes: string): Dish => ({ ...dish, splits: [sizes.split(' ').map(Number)] }));

function unknownCrew(input: SessionInput): readonly InputFault[] {
  if (input.crew === undefined || input.session.crews?.some((crew) => crew.id === input.crew) === true) return [];
  return [
    {
      document: `session ${input.session.id}`,
      path: 'crews',
      found: input.crew,
      wanted: `one of ${(input.session.crews ?? []).map((crew) => crew.id).join(', ') || 'no crews: everybody cooks'}`,
      mend: 'name a crew of the session',
    },
  ];
}
