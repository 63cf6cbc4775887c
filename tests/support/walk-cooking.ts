/**
 * The cooking of raw food and the cooling of cooked food in a plan, walked through step by step: a third judgement beside the
 * planner's and the checker's, from the components' own figures and the strictest of the authorities'.
 */
import type { Component } from '../../solver/kitchen/component.ts';
import type { Plan, PlannedStep } from '../../solver/kitchen/plan.ts';
import { packedDishes } from '../../solver/kitchen/packed-dishes.ts';
import { BOXES } from '../../solver/kitchen/session-components.ts';
import { durationMinutes } from '../../solver/kitchen/values.ts';

/** source: US Department of Agriculture, Food Safety and Inspection Service: meat and poultry in an oven set to 325 °F or more. */
const LEAST_SET_C = 162.7;

/**
 * source: United Kingdom, an adviser of the Food Standards Agency (as reported): cooled and in the fridge within 90 min. The least
 * that any built-in authority gives in a room of no more than 32 °C, so what holds until one is picked.
 */
const MOST_TO_THE_FRIDGE = 90;

/** source: United Kingdom, food hygiene regulations (as reported): kept hot at 63 °C or hotter. What is cooler cools. */
const HOT_C = 63;

/** Everything that is wrong with cooking through and with getting into the fridge in time; empty where all is well. */
export const walkCooking = (plan: Plan): readonly string[] => [...walkThroughHeat(plan), ...walkToTheFridge(plan)];

/** What cooks raw food through without a core target, in an oven set too low or without a probe reading. */
export function walkThroughHeat(plan: Plan): readonly string[] {
  return plan.components.flatMap((component) =>
    component.steps.flatMap((step) => {
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
  );
}

/** What is kept and comes late into the fridge, by its own recipe or by the strictest rules. */
export const walkToTheFridge = (plan: Plan): readonly string[] =>
  plan.components.flatMap(({ id }) => [...lateByRecipe(plan, id), ...lateByRules(plan, id)]);

/** The steps that put a dish away: its own, or those of the boxes that it goes into. */
function puttingAway(
  plan: Plan,
  { id, steps }: Component,
): { readonly boxed: boolean; readonly away: readonly PlannedStep[] } {
  const own = new Set(steps.filter((step) => step.putsAway === true).map((step) => step.id));
  const boxed = own.size === 0 && packedDishes(plan.session).includes(id);
  const away = plan.steps.filter((each) =>
    boxed ? each.component === BOXES && each.step === 'put-away' : each.component === id && own.has(each.step),
  );
  return { boxed, away };
}

/** From the last heat that any of a dish has, batch by batch where it is put away so, to the fridge. */
function lateByRules(plan: Plan, dish: string): readonly string[] {
  const component = plan.components.find(({ id }) => id === dish)!;
  const { boxed, away } = puttingAway(plan, component);
  const batched = (step: string): boolean => component.batches?.steps.includes(step) === true;
  const heats = plan.steps
    .filter((each) => each.component === dish && each.kind === 'step')
    .flatMap((each) => each.places.filter(isHot).map(({ until }) => ({ until, step: each.step, batch: each.batch })));
  return away.flatMap((cold) => {
    const ofIt = heats.filter(
      ({ step, batch }) => boxed || !batched(step) || !batched(cold.step) || batch === cold.batch,
    );
    const last = Math.max(...ofIt.map(({ until }) => until));
    return ofIt.length > 0 && cold.end - last > MOST_TO_THE_FRIDGE
      ? [
          `${dish} is in the fridge ${cold.end - last} min after its last heat, and the rules give ${MOST_TO_THE_FRIDGE}`,
        ]
      : [];
  });
}

const isHot = ({ kind, leastC }: PlannedStep['places'][number]): boolean =>
  ['burner', 'pool', 'kettle'].includes(kind) || (kind === 'rack' && leastC !== undefined && leastC >= HOT_C);

function lateByRecipe(plan: Plan, dish: string): readonly string[] {
  const component = plan.components.find(({ id }) => id === dish)!;
  if (component.fridge === undefined) return [];
  const most = durationMinutes(component.fridge.within);
  const { boxed, away } = puttingAway(plan, component);
  return plan.steps
    .filter((each) => each.component === dish && each.step === component.fridge!.from)
    .flatMap((hot) =>
      away
        .filter((cold) => cold.batch === hot.batch || boxed || !component.batches?.steps.includes(cold.step))
        .filter((cold) => cold.end - hot.end > most)
        .map((cold) => `${dish} is in the fridge ${cold.end - hot.end} min after the heat, not within ${most}`),
    );
}
