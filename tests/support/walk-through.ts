/**
 * A plan walked through minute by minute, with what has touched what: a third judgement of allergens and raw food beside the planner's
 * and the checker's, slow and plain, that shares nothing with either. A thing takes on what the food on it has and has met, and gives
 * all of it to the food on it, until it is washed; water until it is fresh.
 */
import { allergensOfIngredient } from '../../solver/food/allergens.ts';
import type { Component } from '../../solver/kitchen/component.ts';
import type { Plan, PlannedSegment, PlannedStep } from '../../solver/kitchen/plan.ts';
import { packedDishes } from '../../solver/kitchen/packed-dishes.ts';
import type { Eater } from '../../solver/kitchen/session.ts';
import type { Step } from '../../solver/kitchen/step.ts';
import { GLUTEN_CEREALS } from '../../solver/kitchen/values.ts';

/** Something on a thing for a minute: food of a dish with what it has in this step. */
interface Touch {
  readonly thing: string;
  readonly dish: string;
  readonly has: ReadonlySet<string>;
  /** The ladle takes water and brings nothing to it; what drips from above takes nothing. */
  readonly takes: boolean;
  readonly gives: boolean;
  readonly readyToEat: boolean;
}

const TOUCHED = new Set(['pan', 'tray', 'bowl', 'board', 'tool', 'appliance']);

/** What an ingredient has; gluten of who knows which cereal is of all of them. */
function hasOf(component: Component, touches: readonly string[] | undefined): Set<string> {
  const has = new Set<string>();
  for (const ingredient of component.ingredients) {
    if (touches !== undefined && !touches.includes(ingredient.id)) continue;
    for (const group of allergensOfIngredient(ingredient)) has.add(group);
    if (allergensOfIngredient(ingredient).has('gluten'))
      for (const cereal of ingredient.cereals ?? GLUTEN_CEREALS) has.add(cereal);
  }
  return has;
}

const AS_IN_THE_UNION: Readonly<Record<string, string>> = {
  'tree-nuts': 'nuts',
  'crustacean-shellfish': 'crustaceans',
};
const avoidedBy = (eater: Eater): readonly string[] => eater.avoids.map((name) => AS_IN_THE_UNION[name] ?? name);

/**
 * Everything that reaches where it must not, a sentence each; empty where all is well.
 *
 * @param plan any plan; those that break other rules give sentences of no meaning
 */
export function walkThrough(plan: Plan): readonly string[] {
  const faults: string[] = [];
  const { session, kitchen, components } = plan;
  const componentOf = (id: string) => components.find((each) => each.id === id);
  const on = new Map<string, Set<string>>();
  const met = new Map<string, Set<string>>();
  const of = (map: Map<string, Set<string>>, key: string): Set<string> => {
    if (!map.has(key)) map.set(key, new Set());
    return map.get(key)!;
  };
  const packed = packedDishes(session).map((id) => componentOf(id)!);
  const boxed = (session.eaters ?? []).filter(({ boxes }) => boxes > 0);

  for (let minute = 0; minute <= plan.allAwayMinutes; minute++) {
    for (const step of plan.steps) {
      if (step.end !== minute) continue;
      if (step.kind === 'wash') {
        on.delete(step.component);
        on.delete(step.segments[0]!.person!);
      }
      if (step.kind === 'water' && (step.step === 'fill' || step.step === 'change'))
        on.delete(`water ${step.component}`);
      if (step.kind === 'water' && step.step === 'empty') {
        // The pan keeps what was in its water.
        const pan = plan.pools.find(({ pool }) => pool === step.component)!.pan;
        for (const mark of of(on, `water ${step.component}`)) of(on, pan).add(mark);
      }
    }
    for (const step of plan.steps) {
      if (step.kind !== 'packing' || step.step !== 'pack' || step.start !== minute) continue;
      // Where every dish goes to the table, no food goes into the boxes.
      if (packed.length === 0) continue;
      const person = step.segments[0]!.person!;
      for (const mark of boxed.flatMap(avoidedBy))
        if (of(on, person).has(mark)) faults.push(`${person} fills boxes at ${minute} with ${mark} on the hands`);
      for (const dish of packed)
        for (const mark of [...hasOf(dish, undefined), ...of(met, dish.id)]) of(on, person).add(mark);
    }
    const touches = touchesAt(plan, minute);
    for (let passed = -1, before = -2; passed !== before;) {
      before = passed;
      for (const { thing, dish, has, takes, gives } of touches) {
        if (gives) for (const mark of [...has, ...of(met, dish)]) if (!isRaw(mark)) of(on, thing).add(mark);
        if (takes) for (const mark of of(on, thing)) if (!isRaw(mark)) of(met, dish).add(mark);
      }
      passed = [...on.values(), ...met.values()].reduce((sum, set) => sum + set.size, 0);
    }
    for (const { thing, has, gives } of touches) if (gives) for (const mark of has) of(on, thing).add(mark);
    for (const { thing, dish, has, takes, readyToEat } of touches)
      for (const mark of of(on, thing))
        if (isRaw(mark) && takes && readyToEat && !has.has(mark))
          faults.push(`${dish} meets ${mark} on ${thing} at ${minute}`);
  }
  for (const eater of session.eaters ?? [])
    for (const { component: id } of session.dishes) {
      const served = eater.boxes > 0 || session.table?.dishes.includes(id) === true;
      if (!served || (eater.eats !== undefined && !eater.eats.includes(id))) continue;
      const all = new Set([...hasOf(componentOf(id)!, undefined), ...of(met, id)]);
      for (const mark of avoidedBy(eater)) if (all.has(mark)) faults.push(`${eater.name} is given ${mark} with ${id}`);
    }
  return [...new Set(faults)];

  function touchesAt(plan: Plan, minute: number): readonly Touch[] {
    const found: Touch[] = [];
    const racks: { planned: PlannedStep; height: number; oven: string; drips: boolean; touch: Omit<Touch, 'thing'> }[] =
      [];
    for (const planned of plan.steps) {
      const component = componentOf(planned.component);
      const step = component?.steps.find(({ id }) => id === planned.step);
      if (component === undefined || step === undefined || step.touches?.length === 0) continue;
      const has = hasIn(component, [step]);
      const touch = { dish: component.id, has, takes: true, gives: true, readyToEat: step.readyToEat === true };
      for (const { kind, id, from, until, how, boil, oven } of planned.places) {
        if (minute < from || minute >= until) continue;
        if (TOUCHED.has(kind)) found.push({ ...touch, thing: id });
        if (kind === 'pool' && how !== 'draw') found.push({ ...touch, thing: `water ${id}` });
        if (kind === 'pool' && how === 'draw' && minute === from)
          found.push({ ...touch, thing: `water ${id}`, gives: false });
        if (kind === 'pool' && boil === undefined) faults.push(`${planned.id} names no boil`);
        if (kind === 'rack') {
          const height = kitchen.ovens.find((each) => each.id === oven)!.racks.findIndex((rack) => rack.id === id);
          const drips = wayOf(step, planned).needs.some((need) => need.use === 'oven' && need.drips === true);
          racks.push({ planned, height, oven: oven!, drips, touch });
        }
      }
      for (const segment of planned.segments)
        if (segment.hands === 'on' && minute >= segment.start && minute < segment.end && byHand(step, planned, segment))
          found.push({ ...touch, thing: segment.person! });
    }
    for (const { component: dish, hold: id, batch, place } of plan.holds) {
      if (minute < place.from || minute >= place.until || !TOUCHED.has(place.kind)) continue;
      const component = componentOf(dish)!;
      const hold = component.holds!.find((each) => each.id === id)!;
      const ids = component.steps.map((step) => step.id);
      const within = component.steps
        .slice(ids.indexOf(hold.from), ids.indexOf(hold.to) + 1)
        .filter((step) =>
          plan.steps.some(
            (each) =>
              each.component === dish &&
              each.step === step.id &&
              each.start <= minute &&
              (each.batch === batch || batch === 1),
          ),
        );
      if (within.every((step) => step.touches?.length === 0)) continue;
      const readyToEat = within.some((step) => step.readyToEat === true);
      found.push({ thing: place.id, dish, has: hasIn(component, within), takes: true, gives: true, readyToEat });
    }
    for (const above of racks.filter(({ drips }) => drips))
      for (const below of racks.filter(({ oven, height }) => oven === above.oven && height > above.height)) {
        const thing = `under ${above.planned.id} at ${minute}`;
        found.push({ ...above.touch, thing, takes: false }, { ...below.touch, thing, gives: false });
      }
    return found;
  }
}

const isRaw = (mark: string): boolean => mark.startsWith('raw-');

/** What food has in some steps, raw meat and its like among it until it is cooked. */
function hasIn(component: Component, steps: readonly Step[]): ReadonlySet<string> {
  const has = new Set<string>();
  for (const step of steps) {
    for (const mark of hasOf(component, step.touches)) has.add(mark);
    for (const { id, raw } of component.ingredients)
      if (raw !== undefined && step.cooked !== true && step.touches?.includes(id) !== false) has.add(`raw-${raw}`);
  }
  return has;
}

const wayOf = (step: Step, planned: PlannedStep) =>
  planned.alternative === 0 ? step : step.alternatives![planned.alternative - 1]!;

/** Whether hands touch the food in a segment, not only the tray or basket that it is in. */
function byHand(step: Step, planned: PlannedStep, segment: PlannedSegment): boolean {
  const { segments } = wayOf(step, planned);
  if (segment.check === true) {
    const looks = segments.flatMap((each) => (each.hands === 'off' ? (each.checks ?? []) : []));
    const named = looks.filter(({ name }) => name === segment.name);
    return (named.length > 0 ? named : looks).some(({ handles }) => handles !== 'things');
  }
  const main = planned.segments.filter(({ check }) => check !== true).sort((a, b) => a.start - b.start);
  const written = segments[main.indexOf(segment)];
  return written?.hands !== 'on' || written.handles !== 'things';
}
