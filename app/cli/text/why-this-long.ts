/** The binding chain of a plan and what has time to spare, in lines. */
import type { Plan, PlannedStep } from '../../../solver/kitchen/plan.ts';
import { wallClockOf } from '../../solving/wall-offset.ts';
import { headlineOf, minutesText } from './figures.ts';

/** Said of a plan that cannot be read back (see `withOwnReasons`). */
export const UNTOLD =
  'This plan keeps the rules, but not the margins with which Afterheat plans, so it cannot say why it takes so long.';

/** @param plan with its binding chain */
export function whyThisLongText(plan: Plan): string {
  const clock = wallClockOf(plan.start);
  const at = (minute: number): string => clock(minute).time;
  const chain = plan.bindingChain ?? [];
  const fromTable = plan.session.table !== undefined;
  const links = chain.map(({ from, until, name, because }) => {
    const when = from === until ? at(from).padEnd(11) : `${at(from)}–${at(until)}`;
    return `  ${when}  ${name}: ${because}`;
  });
  const spare = plan.steps.filter((step) => (step.slack ?? 0) > 0);
  return [
    [plan.name, plan.kitchen.name, headlineOf(plan)],
    chain.length === 0
      ? ['Nothing decides how long this takes.']
      : [fromTable ? 'What decides when to start, first to last' : 'What decides the finish, first to last', ...links],
    ...(spare.length === 0 ? [] : [['What could start later', ...spare.map((step) => spareLine(plan, step, at))]]),
  ]
    .map((lines) => lines.join('\n'))
    .join('\n\n');
}

function spareLine(plan: Plan, step: PlannedStep, at: (minute: number) => string): string {
  const component = plan.components.find(({ id }) => id === step.component)?.name;
  const name = step.kind !== 'step' || component === undefined ? step.name : `${step.name} (${component})`;
  return `  ${at(step.start)}        ${name}: up to ${minutesText(step.slack ?? 0)}`;
}
