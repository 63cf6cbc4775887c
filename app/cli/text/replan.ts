/** How a replan is told. */
import type { ReplanResult } from '../../../solver/answers/replan/replan.ts';
import type { Plan } from '../../../solver/kitchen/plan.ts';
import { wallClockOf } from '../../solving/wall-offset.ts';
import { minutesText } from './figures.ts';
import { runningOrder } from './running-order.ts';
import { stepName } from './step-name.ts';

type Answered = Exclude<ReplanResult, { readonly kind: 'refused' }>;

const later = (minutes: number): string =>
  minutes === 0 ? 'as planned' : minutes > 0 ? `${minutesText(minutes)} later` : `${minutesText(-minutes)} earlier`;

/** Lines on what the replan does; then the running order. */
export function replanText(before: Plan, result: Answered, now: number): string {
  const clock = wallClockOf(before.start);
  if (result.kind !== 'replanned') {
    return [
      result.kind === 'impossible'
        ? `From ${clock(now).time} on not every limit can be kept: ${result.reason}`
        : `From ${clock(now).time} on no way was found to keep every limit: ${result.reason}`,
      ...result.requirements.map((requirement) => `  clashes: ${requirement}`),
      ...(result.leastBad === null
        ? ['What was told and the order of the work contradict each other.']
        : [
            '',
            'The least bad way to go on, in the old order, breaks this:',
            ...result.broken.map(({ rule, message }) => `  Rule ${rule}: ${message}`),
            '',
            runningOrder(result.leastBad),
          ]),
    ].join('\n');
  }
  const { plan, worth, proven, bound, broken } = result;
  return [
    `From ${clock(now).time} on: finish at ${clock(worth.finish).time}, ${later(worth.finish - before.finishMinutes)}`,
    worth.changed.length === 0
      ? 'Nobody does anything else, or anywhere else, or in another order than planned.'
      : `Changed: ${worth.changed.map((id) => stepName(plan, id)).join('; ')}`,
    proven
      ? 'No way to go on is better, finish and changes weighed together.'
      : `Finish and changes weigh ${worth.total}, at least ${bound}.`,
    ...(broken.length === 0
      ? []
      : ['The past has broken this:', ...broken.map(({ rule, message }) => `  Rule ${rule}: ${message}`)]),
    '',
    runningOrder(plan),
  ].join('\n');
}

/** The same as data. */
export function replanSummary(before: Plan, result: Answered): object {
  const steps = (plan: Plan) =>
    plan.steps.map(({ id, start, end, segments }) => ({
      id,
      start,
      end,
      people: [...new Set(segments.flatMap(({ person }) => person ?? []))],
    }));
  if (result.kind !== 'replanned') {
    const { kind, reason, requirements, leastBad, broken, stopped } = result;
    return {
      status: kind,
      reason,
      requirements,
      broken,
      stopped,
      leastBad: leastBad === null ? null : { finishMinutes: leastBad.finishMinutes, steps: steps(leastBad) },
    };
  }
  const { plan, worth, bound, proven, carriedOn, broken, stopped } = result;
  return {
    status: proven ? 'proven' : 'bounded',
    finishMinutes: worth.finish,
    plannedFinishMinutes: before.finishMinutes,
    changed: worth.changed,
    total: worth.total,
    bound,
    carriedOn,
    broken,
    stopped,
    steps: steps(plan),
  };
}
