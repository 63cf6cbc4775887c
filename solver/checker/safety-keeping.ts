/**
 * Rule 9, keeping: hot holding is hot and short enough; what is kept reaches the fridge in time after its last heat, by its own
 * recipe and by the rules in force; and no recipe claims a longer life in the fridge than the rules give its food.
 */
import { minutesDown } from '../kitchen/scaling.ts';
import { packedDishes } from '../kitchen/packed-dishes.ts';
import { BOXES } from '../kitchen/session-components.ts';
import { durationMinutes } from '../kitchen/values.ts';
import { lastHeat, needHeats, wayHeats } from '../safety/last-heat.ts';
import { fridgeDays, fridgeDeadline, hotHolding } from '../safety/limits.ts';
import { GUARD_C } from './oven-course.ts';
import { called, type Reading, type StepReading } from './reading.ts';
import type { Courses } from './safety-cooking.ts';
import { told } from './safety-told.ts';
import type { Violation } from './violation.ts';

export function checkHotHold(reading: Reading, courses: Courses): readonly Violation[] {
  const least = hotHolding(reading.rules);
  const held = reading.steps.filter(({ instance, pieces }) => instance.step.hotHold !== undefined && pieces.length > 0);
  return held.flatMap((step): readonly Violation[] => {
    const { leastC, longest } = step.instance.step.hotHold!;
    const most = minutesDown(durationMinutes(longest));
    const together = held.filter(
      ({ instance }) =>
        instance.component.id === step.instance.component.id &&
        !(instance.batched && step.instance.batched && instance.batch !== step.instance.batch),
    );
    const sum = together.reduce((minutes, { start, end }) => minutes + end - start, 0);
    const { planned, uses } = step.pieces[0]!;
    const long =
      sum > most
        ? [told(`${called(planned)} is kept hot for ${sum} min, and ${most} is the longest.`, [planned.id], step.start)]
        : [];
    const low =
      least !== null && leastC < least.value
        ? [
            told(
              `${called(planned)} is kept hot at ${leastC} °C, and the safety rules ask for ${least.value} °C.`,
              [planned.id],
              step.start,
              'too-cool',
            ),
          ]
        : [];
    const cool = uses.flatMap(({ need, place }): readonly Violation[] => {
      const course = courses.get(place.oven ?? '');
      if (need.use !== 'oven' || course === undefined) return [];
      for (let minute = place.from; minute <= place.until; minute++) {
        const celsius = course.celsiusAt(minute);
        if (celsius >= leastC - GUARD_C) continue;
        const message = `${course.oven.name} is at ${Math.round(celsius)} °C at ${reading.clock.at(minute)}, too cool to keep ${called(planned)} at ${leastC} °C.`;
        return [told(message, [planned.id], minute, 'too-cool')];
      }
      return [];
    });
    return [...long, ...low, ...cool];
  });
}

/** The steps that put a component into the fridge: its own, or those of the boxes that it goes into; none: it is eaten. */
function puttingAway(reading: Reading, component: string): readonly StepReading[] {
  const there = reading.steps.filter(({ pieces, instance }) => pieces.length > 0 && instance.step.putsAway === true);
  const own = there.filter(({ instance }) => instance.component.id === component);
  if (own.length > 0) return own;
  const boxed = packedDishes(reading.plan.session).includes(component);
  return boxed ? there.filter(({ instance }) => instance.component.id === BOXES) : [];
}

/** A step after which a component cools, the minute that it is off the heat, and the minutes it has from then to the fridge. */
interface CoolingStart {
  readonly step: StepReading;
  readonly minute: number;
  readonly most: number;
  /** Who gives that time: the recipe itself, or the safety rules. */
  readonly by: 'recipe' | 'rules';
}

function coolingStarts(reading: Reading): readonly CoolingStart[] {
  const holdingC = hotHolding(reading.rules)?.value ?? 0;
  return reading.dishes.flatMap(({ component }): readonly CoolingStart[] => {
    const of = (id: string): readonly StepReading[] =>
      reading.steps.filter(
        ({ instance, pieces }) =>
          pieces.length > 0 && instance.component.id === component.id && instance.step.id === id,
      );
    const { fridge } = component;
    const written =
      fridge === undefined
        ? []
        : of(fridge.from).map((step): CoolingStart => {
            const most = minutesDown(durationMinutes(fridge.within));
            return { step, minute: step.end, most, by: 'recipe' };
          });
    const limit = fridgeDeadline(reading.rules, component.storage, reading.plan.kitchen.roomC);
    if (limit === null) return written;
    const asked = lastHeat(component, holdingC).flatMap(({ id }) =>
      of(id).flatMap((step): readonly CoolingStart[] => {
        const minute = offTheHeat(step, holdingC);
        return minute === null ? [] : [{ step, minute, most: limit.value, by: 'rules' }];
      }),
    );
    return [...written, ...asked];
  });
}

/** When the food of a step leaves the heat as planned; null: it is done in a way that does not heat it. */
export function offTheHeat(step: StepReading, holdingC: number): number | null {
  const ends = step.pieces.flatMap(({ uses }) =>
    uses.filter(({ need }) => needHeats(need, holdingC)).map(({ place }) => place.until),
  );
  if (ends.length > 0) return Math.max(...ends);
  const [piece] = step.pieces;
  const way = piece?.way ?? null;
  return way !== null && wayHeats(step.instance.step, way, holdingC) ? step.end : null;
}

export function checkFridge(reading: Reading): readonly Violation[] {
  const { clock } = reading;
  return coolingStarts(reading).flatMap(({ step, minute, most, by }) => {
    const { component, batched, batch } = step.instance;
    return puttingAway(reading, component.id)
      .filter(({ instance }) => {
        const sameRecipe = instance.component.id === component.id;
        return !(sameRecipe && instance.batched && batched && batch !== instance.batch);
      })
      .filter(({ end }) => end - minute > most)
      .map((away) =>
        told(
          `${component.name} leaves the heat at ${clock.at(minute)}, must be in the fridge by ${clock.at(minute + most)}${by === 'rules' ? ' by the safety rules' : ''}, and is there at ${clock.at(away.end)}.`,
          [step.pieces.at(-1)!.planned.id, away.pieces.at(-1)!.planned.id],
          away.end,
        ),
      );
  });
}

/** No recipe says that its food keeps longer than the rules let it. */
export function checkKeeping(reading: Reading): readonly Violation[] {
  return reading.dishes
    .filter(({ kind }) => kind === 'step')
    .flatMap(({ component }): readonly Violation[] => {
      const days = durationMinutes(component.keeps.fridge) / (24 * 60);
      const limit = fridgeDays(reading.rules, component.storage);
      if (limit === null || days <= limit.value) return [];
      const message = `${component.name} is said to keep for ${days} days in the fridge, and the safety rules give it ${limit.value}.`;
      return [told(message, [], 0)];
    });
}
