/**
 * A session written out: every step of every batch with its minutes worked out. These are facts of the documents, shared by
 * the translation and the checker; nothing here says when or where anything happens.
 */
import { coolingMinutes } from '../food/cooling-minutes.ts';
import { coolingTrouble, coolingTroubles } from '../food/cooling-troubles.ts';
import type { Component, Hold } from './component.ts';
import type { InputFault } from './fault.ts';
import { onceForBoth, onceOn } from './once.ts';
import { minutesDown, minutesUp, scaledMl, splitsOf, workMinutes } from './scaling.ts';
import { BOXES, CLEARING, boxedComponents, clearingComponent, packingComponent } from './session-components.ts';
import type { Session } from './session.ts';
import type { Need, Segment, Step } from './step.ts';
import { durationMinutes } from './values.ts';

export interface OnPart {
  readonly hands: 'on';
  readonly name: string | null;
  readonly minutes: number;
  /** What the person must be able to do; null: anybody. */
  readonly who: string | null;
  readonly probe: boolean;
  /** The hands touch the food itself, not only the thing that it is in. */
  readonly touchesFood: boolean;
}
export interface CheckPart {
  readonly name: string;
  /** Earliest and latest start, minutes from the start of its hands-off part. */
  readonly earliest: number;
  readonly latest: number;
  readonly minutes: number;
  readonly who: string | null;
  readonly probe: boolean;
  /** The hands touch the food itself, not only the thing that it is in. */
  readonly touchesFood: boolean;
}
export interface OffPart {
  readonly hands: 'off';
  readonly name: string | null;
  /** Minutes, those that food takes to cool within; the time to the boil of `boilMl` comes on top of both. */
  readonly shortest: number;
  readonly longest: number;
  readonly boilMl: number;
  /** An oven makes up for a cold load here; its minutes come on top of both too. */
  readonly recovers: boolean;
  readonly checks: readonly CheckPart[];
}
export type Part = OnPart | OffPart;

/** One way of doing a step; number 0 is the step as written, n its n-th alternative. */
export interface Way {
  readonly name: string;
  readonly parts: readonly Part[];
  /** Volumes are those of the batch. */
  readonly needs: readonly Need[];
}

export interface Order {
  readonly component: string;
  readonly step: string;
  readonly shortest: number;
  /** null: no longest gap. */
  readonly longest: number | null;
  /** Minutes after which the food waits past its best, and the weight of each further minute; null: it does not mind. */
  readonly best: { readonly minutes: number; readonly weight: number } | null;
}

export interface StepInstance {
  /** `component/step`, with `.2` for the second of several batches. */
  readonly id: string;
  readonly component: Component;
  readonly step: Step;
  readonly batch: number;
  readonly portions: number;
  /** Done batch by batch. */
  readonly batched: boolean;
  readonly ways: readonly Way[];
  readonly after: readonly Order[];
  /** null: in one go. */
  readonly pieces: { readonly most: number; readonly least: number } | null;
  readonly inFinish: boolean;
}

export interface HoldInstance {
  readonly hold: Hold;
  readonly need: Need;
  readonly component: Component;
  readonly batch: number;
  readonly batched: boolean;
}

/** A component of the session with its amount and the ways it may be split into batches. */
export interface Dish {
  readonly component: Component;
  readonly portions: number;
  readonly splits: readonly (readonly number[])[];
  readonly kind: 'step' | 'packing' | 'clearing';
}

function check(
  part: NonNullable<Extract<Segment, { hands: 'off' }>['checks']>[number],
  component: Component,
  portions: number,
): CheckPart {
  const at = durationMinutes(part.at);
  const within = durationMinutes(part.within);
  const earliest = Math.max(0, minutesUp(at - within));
  return {
    name: part.name,
    earliest,
    latest: Math.max(earliest, minutesDown(at + within)),
    minutes: workMinutes(part.work, component, portions),
    who: part.who ?? null,
    probe: part.probe === true,
    touchesFood: part.handles !== 'things',
  };
}

function part(segment: Segment, component: Component, portions: number): Part {
  if (segment.hands === 'on') {
    return {
      hands: 'on',
      name: segment.name ?? null,
      minutes: workMinutes(segment.work, component, portions),
      who: segment.who ?? null,
      probe: segment.probe === true,
      touchesFood: segment.handles !== 'things',
    };
  }
  const given = segment.shortest === undefined ? 0 : durationMinutes(segment.shortest);
  const cooling = coolingMinutes(segment.cools, [component]);
  const shortest = minutesUp(given) + cooling;
  const longest = segment.longest === undefined ? shortest : minutesDown(durationMinutes(segment.longest)) + cooling;
  return {
    hands: 'off',
    name: segment.name ?? null,
    shortest,
    longest: Math.max(shortest, longest),
    boilMl: segment.boilMl === undefined ? 0 : scaledMl(segment.boilMl, component, portions),
    recovers: false,
    checks: (segment.checks ?? []).map((each) => check(each, component, portions)),
  };
}

/** A need with its volumes and masses grown to the amount. */
export function scaledNeed(need: Need, component: Component, portions: number): Need {
  switch (need.use) {
    case 'pan':
    case 'bowl':
      return { ...need, leastMl: scaledMl(need.leastMl, component, portions) };
    case 'kettle':
      return { ...need, ml: scaledMl(need.ml, component, portions) };
    case 'pool':
      return need.ml === undefined ? need : { ...need, ml: scaledMl(need.ml, component, portions) };
    case 'oven': {
      if (need.load === undefined) return need;
      const massG = ((need.load.massG ?? component.makes.massG) * portions) / component.makes.portions;
      return { ...need, load: { ...need.load, massG } };
    }
    default:
      return need;
  }
}

/**
 * The need whose cold load an oven makes up for in a part: the first that has one, in the first hands-off part that it covers and
 * that waits for no boil.
 *
 * @returns null where there is none
 */
export function loadOfPart(way: Way, index: number): Extract<Need, { use: 'oven' }> | null {
  for (const need of way.needs) {
    if (need.use !== 'oven' || need.load === undefined || need.afterheat === true) continue;
    const { from, to } = need.during ?? { from: 0, to: way.parts.length - 1 };
    const first = way.parts.findIndex(
      (part, at) => at >= from && at <= to && part.hands === 'off' && part.boilMl === 0,
    );
    if (first === index) return need;
  }
  return null;
}

/** A way with the parts marked in which an oven makes up for a load. */
const withRecovery = (way: Way): Way => ({
  ...way,
  parts: way.parts.map((part, index) =>
    part.hands === 'off' && loadOfPart(way, index) !== null ? { ...part, recovers: true } : part,
  ),
});

function ways(component: Component, step: Step, portions: number): readonly Way[] {
  return [{ name: step.name, segments: step.segments, needs: step.needs }, ...(step.alternatives ?? [])]
    .map((way) => ({
      name: way.name,
      parts: way.segments.map((segment) => part(segment, component, portions)),
      needs: way.needs.map((need) => scaledNeed(need, component, portions)),
    }))
    .map(withRecovery);
}

function orders(component: Component, step: Step): readonly Order[] {
  return (step.after ?? []).map((after) => {
    const [first, second] = after.step.split('/') as [string, string | undefined];
    return {
      component: second === undefined ? component.id : first,
      step: second ?? first,
      shortest: after.shortest === undefined ? 0 : minutesUp(durationMinutes(after.shortest)),
      longest: after.longest === undefined ? null : minutesDown(durationMinutes(after.longest)),
      best:
        after.best === undefined
          ? null
          : { minutes: minutesDown(durationMinutes(after.best)), weight: after.weight ?? 1 },
    };
  });
}

/** Default piece count and least piece length of interruptible work, minutes. */
const PIECES = 3;
const LEAST_PIECE = 3;

/**
 * Every step of a dish under one split into batches.
 *
 * @param split portions of each batch; one entry for a dish in one batch
 * @returns steps in the order of the component, batch by batch
 */
export const expandDish = (dish: Dish, split: readonly number[]): readonly StepInstance[] =>
  expanded(dish, split.join(' '));

const expanded = onceOn((dish: Dish, sizes: string) => stepsOf(dish, sizes.split(' ').map(Number)));

function stepsOf({ component, portions }: Dish, split: readonly number[]): readonly StepInstance[] {
  const batchedIds = new Set(component.batches?.steps ?? []);
  return component.steps.flatMap((step) => {
    const batched = batchedIds.has(step.id);
    const sizes = batched ? split : [portions];
    return sizes.map((size, index): StepInstance => {
      const stepWays = ways(component, step, size);
      const work = stepWays[0]!.parts[0]!;
      const interruptible = step.interruptible;
      const least = interruptible?.least === undefined ? LEAST_PIECE : minutesUp(durationMinutes(interruptible.least));
      const most =
        interruptible === undefined || work.hands === 'off'
          ? 1
          : Math.min(interruptible.pieces ?? PIECES, Math.floor(work.minutes / least));
      return {
        id: `${component.id}/${step.id}${sizes.length > 1 ? `.${index + 1}` : ''}`,
        component,
        step,
        batch: index + 1,
        portions: size,
        batched,
        ways: stepWays,
        after: orders(component, step),
        pieces: most > 1 ? { most, least } : null,
        inFinish: step.putsAway !== true,
      };
    });
  });
}

/** Every hold of a dish under one split. A hold is batched when the step it starts with is. */
export function expandHolds(dish: Dish, split: readonly number[]): readonly HoldInstance[] {
  const { component, portions } = dish;
  const batchedIds = new Set(component.batches?.steps ?? []);
  return (component.holds ?? []).flatMap((hold) => {
    const batched = batchedIds.has(hold.from);
    const sizes = batched ? split : [portions];
    return sizes.map((size, index) => ({
      hold,
      need: scaledNeed(hold.need, component, size),
      component,
      batch: index + 1,
      batched,
    }));
  });
}

/**
 * The dishes of a session, its packing and its clearing among them, last.
 *
 * @param components at least those the session names
 * @returns dishes, or the faults that keep it from being cooked
 */
export const dishesOf = onceForBoth(readDishes);

function readDishes(
  session: Session,
  components: readonly Component[],
): { readonly dishes: readonly Dish[]; readonly faults: readonly InputFault[] } {
  const dishes: Dish[] = [];
  const faults: InputFault[] = [];
  const document = `session ${session.id}`;
  session.dishes.forEach(({ component: id, portions }, index) => {
    const component = components.find((candidate) => candidate.id === id);
    const path = `dishes[${index}]`;
    if (component === undefined) {
      faults.push({
        document,
        path: `${path}.component`,
        found: id,
        wanted: 'a component that is there',
        mend: `add ${id}.component.json, or take the dish out`,
      });
      return;
    }
    const splits = component.batches === undefined ? [[portions]] : splitsOf(portions, component.batches.mostPortions);
    if (splits.length === 0) {
      faults.push({
        document,
        path: `${path}.portions`,
        found: `${portions} portions`,
        wanted: `at most ${3 * component.batches!.mostPortions}, three batches of ${component.batches!.mostPortions}`,
        mend: 'make less of it, or list it twice as two components',
      });
      return;
    }
    faults.push(...coolingTroubles(component).map((trouble) => ({ document: `component ${id}`, ...trouble })));
    dishes.push({ component, portions, splits, kind: 'step' });
  });
  const cooked = dishes.map((dish) => dish.component);
  const boxCools = session.packing?.cooling?.cools;
  if (boxCools !== undefined)
    faults.push(
      ...coolingTrouble(boxCools, boxedComponents(session, cooked), 'packing.cooling.cools').map((trouble) => ({
        document,
        ...trouble,
      })),
    );
  const boxes = packingComponent(session, cooked);
  if (boxes !== null)
    dishes.push({
      component: boxes,
      portions: boxes.makes.portions,
      splits: [[boxes.makes.portions]],
      kind: 'packing',
    });
  const clearing = clearingComponent(session, boxes === null ? cooked : [...cooked, boxes]);
  if (clearing !== null) dishes.push({ component: clearing, portions: 1, splits: [[1]], kind: 'clearing' });
  return { dishes, faults };
}

export { BOXES, CLEARING };
