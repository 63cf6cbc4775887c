/**
 * Rule 9, cooling in stages: where a recipe or the boxes say how cold the core is after a cooling, it is that cold within the time that
 * the rules give. What no cooling tells of is not claimed: the plan's cautions say so.
 */
import type { Component } from '../kitchen/component.ts';
import { packedDishes } from '../kitchen/packed-dishes.ts';
import { BOXES } from '../kitchen/session-components.ts';
import { coolsTo, lastHeat } from '../safety/last-heat.ts';
import { coolingRules, hotHolding } from '../safety/limits.ts';
import type { Reading, StepReading } from './reading.ts';
import { offTheHeat } from './safety-keeping.ts';
import { told } from './safety-told.ts';
import type { Violation } from './violation.ts';

interface Moment {
  readonly minute: number;
  readonly step: StepReading;
}

const stepsOf = (reading: Reading, component: string): readonly StepReading[] =>
  reading.steps.filter(({ instance, pieces }) => pieces.length > 0 && instance.component.id === component);

/** From when on a component's food cools: each of its last heats, or, where none of it is ever hot, when it is begun. */
function starts(reading: Reading, component: Component, event: string): readonly Moment[] {
  const holdingC = hotHolding(reading.rules)?.value ?? 0;
  const own = stepsOf(reading, component.id);
  const last = new Set(lastHeat(component, holdingC).map(({ id }) => id));
  if (event === 'made') {
    const [first] = last.size > 0 ? [] : [...own].sort((a, b) => a.start - b.start);
    return first === undefined ? [] : [{ minute: first.start, step: first }];
  }
  return own.flatMap((step): readonly Moment[] => {
    const minute = last.has(step.instance.step.id) ? offTheHeat(step, holdingC) : null;
    return minute === null ? [] : [{ minute, step }];
  });
}

/** When coolings of a component's food, by itself or in boxes, end at this temperature or colder. */
function reached(reading: Reading, component: Component, celsius: number): readonly Moment[] {
  const boxed = packedDishes(reading.plan.session).includes(component.id);
  const boxC = reading.plan.session.packing?.cooling?.cools?.toC ?? Infinity;
  return [
    ...stepsOf(reading, component.id).flatMap((step) =>
      step.pieces.flatMap(({ planned, spans }) =>
        (spans ?? []).flatMap(({ end }, index): readonly Moment[] =>
          (coolsTo(step.instance.step, planned.alternative, index) ?? Infinity) <= celsius
            ? [{ minute: end, step }]
            : [],
        ),
      ),
    ),
    ...(boxed && boxC <= celsius
      ? stepsOf(reading, BOXES)
          .filter(({ instance }) => instance.step.id === 'cool')
          .map((step) => ({ minute: step.end, step }))
      : []),
  ];
}

export function checkStages(reading: Reading): readonly Violation[] {
  const { clock, plan, rules } = reading;
  return reading.dishes
    .filter(({ kind }) => kind === 'step')
    .flatMap(({ component }) =>
      coolingRules(rules, component.storage, plan.kitchen.roomC).flatMap(({ start, end, mostMinutes }) => {
        if (end.event !== 'core-at-most') return [];
        const cold = reached(reading, component, end.celsius);
        return starts(reading, component, start.event).flatMap(({ minute, step }): readonly Violation[] => {
          const { batched, batch } = step.instance;
          const [first] = cold
            .filter(({ minute: at, step: { instance } }) => {
              const sameRecipe = instance.component.id === component.id;
              return at >= minute && !(sameRecipe && batched && instance.batched && instance.batch !== batch);
            })
            .sort((a, b) => a.minute - b.minute);
          if (first === undefined || first.minute - minute <= mostMinutes) return [];
          const from = start.event === 'made' ? 'is begun' : 'leaves the heat';
          const message = `${component.name} ${from} at ${clock.at(minute)} and is at ${end.celsius} °C only at ${clock.at(first.minute)}: the safety rules give it ${mostMinutes} min.`;
          return [told(message, [step.pieces[0]!.planned.id, first.step.pieces[0]!.planned.id], first.minute)];
        });
      }),
    );
}
