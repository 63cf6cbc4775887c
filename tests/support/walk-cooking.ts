/**
 * The cooking of raw food and the cooling of cooked food in a plan, walked through step by step: a third judgement beside the
 * planner's and the checker's, from the components' own figures.
 */
import type { Plan } from '../../solver/kitchen/plan.ts';
import { BOXES, packedDishes } from '../../solver/kitchen/session-components.ts';
import { durationMinutes } from '../../solver/kitchen/values.ts';

/** source: US Department of Agriculture, Food Safety and Inspection Service: meat and poultry in an oven set to 325 °F or more. */
const LEAST_SET_C = 162.7;

/** Everything that is wrong with cooking through and with getting into the fridge in time; empty where all is well. */
export function walkCooking(plan: Plan): readonly string[] {
  return plan.components.flatMap((component) => [
    ...component.steps.flatMap((step) => {
      const { cooksThrough: through } = step;
      if (through === undefined) return [];
      return plan.steps
        .filter((each) => each.component === component.id && each.step === step.id)
        .flatMap((planned) => {
          const faults: string[] = [];
          if (!(through.coreC > 0)) faults.push(`${planned.id} names no core temperature`);
          const heatEnds = Math.max(...planned.segments.filter(({ hands }) => hands === 'off').map(({ end }) => end));
          if (
            !planned.segments.some(({ probe, hands, start }) => probe === true && hands === 'on' && start >= heatEnds)
          )
            faults.push(`${planned.id} ends without a probe reading`);
          if (through.raw === 'fish' || through.raw === 'egg') return faults;
          for (const { kind, oven, from, until } of planned.places) {
            if (kind !== 'rack') continue;
            const { settings } = plan.ovens.find((each) => each.oven === oven)!;
            for (let minute = from; minute < until; minute++) {
              const set = settings.filter((turn) => turn.minute <= minute).at(-1)?.celsius ?? null;
              if (set === null || set < LEAST_SET_C) faults.push(`${planned.id} has its oven at ${set} at ${minute}`);
            }
          }
          return faults;
        });
    }),
    ...lateForTheFridge(plan, component.id),
  ]);
}

function lateForTheFridge(plan: Plan, dish: string): readonly string[] {
  const component = plan.components.find(({ id }) => id === dish)!;
  if (component.fridge === undefined) return [];
  const most = durationMinutes(component.fridge.within);
  const putsAway = new Set(component.steps.filter((step) => step.putsAway === true).map(({ id }) => id));
  const boxed = putsAway.size === 0 && packedDishes(plan.session).includes(dish);
  const away = plan.steps.filter((each) =>
    boxed ? each.component === BOXES && each.step === 'put-away' : each.component === dish && putsAway.has(each.step),
  );
  return plan.steps
    .filter((each) => each.component === dish && each.step === component.fridge!.from)
    .flatMap((hot) =>
      away
        .filter((cold) => cold.batch === hot.batch || boxed || !component.batches?.steps.includes(cold.step))
        .filter((cold) => cold.end - hot.end > most)
        .map((cold) => `${dish} is in the fridge ${cold.end - hot.end} min after the heat, not within ${most}`),
    );
}
