/** How sure a plan is, in lines. */
import type { HowSure } from '../../../solver/answers/how-sure.ts';
import type { Plan } from '../../../solver/kitchen/plan.ts';
import { wallClockOf } from '../../solving/wall-offset.ts';
import { stepName } from './step-name.ts';

/** Steps told; the rest carries little. */
const MOST_STEPS = 6;
const MOST_LIMITS = 4;

/** A share as a cook would say it: never certain where chance is at play. */
export function chanceText(share: number): string {
  if (share <= 0) return 'hardly ever';
  if (share >= 1) return 'nearly always';
  if (share < 0.01) return 'under 1 %';
  if (share > 0.99) return 'over 99 %';
  return `${Math.round(share * 100)} %`;
}

const oftenText = (share: number): string =>
  share > 0 && share < 1 ? `${chanceText(share)} of the time` : chanceText(share);

export function howSureText(plan: Plan, sure: HowSure): string {
  const clock = wallClockOf(plan.start);
  const at = (minute: number): string => clock(minute).time;
  const steps = sure.steps.filter(({ delayMinutes }) => delayMinutes >= 0.05).slice(0, MOST_STEPS);
  const limits = sure.limits.slice(0, MOST_LIMITS);
  return [
    `${plan.name}: played through ${sure.samples} times in the plan’s own order, with work that takes longer or less`,
    `  half of the time done by ${at(sure.p50)}, nine times in ten by ${at(sure.p90)}; planned ${at(sure.plannedFinish)}`,
    ...sure.by.map(({ minute, chance }) => `  done by ${at(minute)}: ${chanceText(chance)}`),
    ...(steps.length === 0
      ? []
      : [
          'Where the risk lies',
          ...steps.map(
            ({ step, critical, delayMinutes }) =>
              `  ${stepName(plan, step)}: brings ${delayMinutes.toFixed(1)} min on average, decides the finish ${oftenText(critical)}`,
          ),
        ]),
    ...(limits.length === 0
      ? []
      : [
          'Limits that may be missed',
          ...limits.map(
            ({ step, requirement, chance }) =>
              `  ${requirement ?? `${stepName(plan, step)} goes on no longer than it may`}: missed ${oftenText(chance)}`,
          ),
        ]),
    'How much work varies is set in the session (spreads); the usual figures are invented, from no source.',
  ].join('\n');
}
