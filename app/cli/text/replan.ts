/** How a replan is told. */
import type { LiveEvent } from '../../../solver/answers/replan/events.ts';
import type { Answered } from '../../../solver/answers/replan/result.ts';
import type { Violation } from '../../../solver/checker/violation.ts';
import { wholeId, type Plan } from '../../../solver/kitchen/plan.ts';
import { wallClockOf } from '../../solving/wall-offset.ts';
import { minutesText } from './figures.ts';
import { runningOrder } from './running-order.ts';
import { stepName } from './step-name.ts';
import { ruleText } from './violations.ts';

const later = (minutes: number): string =>
  minutes === 0 ? 'as planned' : minutes > 0 ? `${minutesText(minutes)} later` : `${minutesText(-minutes)} earlier`;

/** What was told of a step, as it was understood: `roast (Roots) goes on until 11:05, 11 min longer than planned`. */
function eventText(before: Plan, event: LiveEvent, now: number, at: (minute: number) => string): string {
  const step = before.steps.find(({ id }) => id === event.step);
  const name = stepName(before, step === undefined ? event.step : wholeId(step));
  switch (event.kind) {
    case 'started':
      return `${name} began at ${at(event.at)}`;
    case 'done':
      return `${name} was over at ${at(event.at)}`;
    case 'waiting':
      return `${name} has not begun`;
    case 'skipped':
      return `${name} is left out`;
    case 'late': {
      const until = now + event.remaining;
      const part = step?.segments.findLast(
        (each) => !(each.hands === 'on' && each.check === true) && each.start <= now,
      );
      const by = part === undefined ? 0 : until - part.end;
      const than =
        by === 0 ? 'as planned' : `${minutesText(Math.abs(by))} ${by > 0 ? 'longer' : 'shorter'} than planned`;
      return `${name}: what is being done now goes on until ${at(until)}${part === undefined ? '' : `, ${than}`}`;
    }
  }
}

/** Looks on the way that were planned and are no more, where the step is not left out and not over. */
function lostChecks(before: Plan, after: Plan, events: readonly LiveEvent[]): readonly string[] {
  const ended = events.filter(({ kind }) => kind === 'done' || kind === 'skipped').map(({ step }) => step);
  return after.steps.flatMap((step) => {
    if (ended.includes(step.id)) return [];
    const was = before.steps.find(({ id }) => id === step.id)?.segments ?? [];
    const still = step.segments.filter((each) => each.hands === 'on' && each.check === true).length;
    return was
      .filter((each) => each.hands === 'on' && each.check === true)
      .slice(still)
      .map(
        (each) => `${(each.hands === 'on' ? each.name : undefined) ?? 'a look'}, in ${stepName(after, wholeId(step))}`,
      );
  });
}

const ruleLines = (violations: readonly Violation[]): readonly string[] =>
  violations.map((violation) => `  ${ruleText(violation)}`);

/** What the past has broken; empty where nothing. */
const pastText = (broken: readonly Violation[]): readonly string[] =>
  broken.length === 0 ? [] : ['As planned and as told, the past has broken this:', ...ruleLines(broken)];

const cautionsText = (cautions: readonly string[]): readonly string[] =>
  cautions.length === 0 ? [] : ['', 'What to do now:', ...cautions.map((words) => `  ${words}`)];

/** Why there is no plan at all, and what to do. */
function nonePlanned(before: Plan, result: Extract<Answered, { readonly leastBad: unknown }>): readonly string[] {
  const { broken, against, inTheWay, toldAhead, cautions } = result;
  const why =
    against.length > 0
      ? [
          against.some(({ harm }) => harm !== undefined)
            ? 'There is no plan to go on by: limits of time could be let go, and this must not be:'
            : 'There is no plan to go on by: whatever limits of time are let go, this would be broken:',
          ...ruleLines(against),
        ]
      : inTheWay.length > 0
        ? [
            'There is no plan to go on by: as told, these stand in each other’s way, whatever limits of time are let go:',
            ...inTheWay.map((id) => `  ${stepName(before, id)}`),
          ]
        : ['There is no plan to go on by: what was told and the order of the work contradict each other.'];
  return [
    '',
    ...why,
    ...toldAhead.flatMap(({ step, waitsFor }) => [
      '',
      `Before ${stepName(before, step)} comes this, and nothing says that it is over. Where it is, tell it first (--done):`,
      ...waitsFor.map((id) => `  ${stepName(before, id)}: ${id}`),
    ]),
    ...(broken.length === 0 ? [] : ['', ...pastText(broken)]),
    ...cautionsText(cautions),
    '',
    'Settle this by hand, food that may spoil or harm first. Then tell what is done (--done), what takes longer (--late) or what is left',
    'out (--skip), and ask again.',
  ];
}

/** Lines on what was told and what the replan does; then the running order from now on. */
export function replanText(before: Plan, result: Answered, now: number, events: readonly LiveEvent[]): string {
  const clock = wallClockOf(before.start);
  const at = (minute: number): string => clock(minute).time;
  const told = events.map((event) => `Told: ${eventText(before, event, now, at)}.`);
  if (result.kind !== 'replanned') {
    return [
      ...told,
      result.kind === 'impossible'
        ? `From ${clock(now).time} on not every limit can be kept: ${result.reason}`
        : `From ${clock(now).time} on no way was found to keep every limit: ${result.reason}`,
      ...result.requirements.map((requirement) => `  clashes: ${requirement}`),
      ...(result.leastBad === null
        ? nonePlanned(before, result)
        : [
            '',
            'The least bad way to go on breaks this:',
            ...ruleLines(result.broken),
            ...cautionsText(result.cautions),
            '',
            runningOrder(result.leastBad, { now, before }),
          ]),
    ].join('\n');
  }
  const { plan, worth, proven, bound, broken, cautions } = result;
  const lost = lostChecks(before, plan, events);
  return [
    ...told,
    `From ${clock(now).time} on: finish at ${clock(worth.finish).time}, ${later(worth.finish - before.finishMinutes)}`,
    worth.changed.length === 0
      ? 'Everybody keeps their work, places and order; only times move.'
      : `In other hands, another place or another order: ${worth.changed.map((id) => stepName(plan, id)).join('; ')}`,
    proven
      ? 'Proven: no other way to go on is better, finish and changes weighed together.'
      : `A better way to go on is not ruled out: finish and changes weigh ${worth.total}, and never under ${bound}.`,
    ...(lost.length === 0 ? [] : [`No longer planned, for what is being done is shorter now: ${lost.join('; ')}`]),
    ...pastText(broken),
    ...cautionsText(cautions),
    '',
    runningOrder(plan, { now, before }),
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
    const { kind, reason, requirements, leastBad, broken, against, inTheWay, toldAhead, cautions, stopped } = result;
    return {
      status: kind,
      reason,
      requirements,
      broken,
      against,
      inTheWay,
      toldAhead,
      cautions,
      stopped,
      leastBad: leastBad === null ? null : { finishMinutes: leastBad.finishMinutes, steps: steps(leastBad) },
    };
  }
  const { plan, worth, bound, proven, carriedOn, broken, cautions, stopped } = result;
  return {
    status: proven ? 'proven' : 'bounded',
    finishMinutes: worth.finish,
    plannedFinishMinutes: before.finishMinutes,
    changed: worth.changed,
    total: worth.total,
    bound,
    carriedOn,
    broken,
    cautions,
    stopped,
    steps: steps(plan),
  };
}
