/** What a cook tells of a running session, step by step. What nobody tells of went, and goes, as planned. */
import type { InputFault } from '../../kitchen/fault.ts';
import type { Plan, PlannedStep } from '../../kitchen/plan.ts';

/** `step` is the id of a planned step. Minutes are from the start of the session. */
export type LiveEvent =
  | { readonly kind: 'started'; readonly step: string; readonly at: number }
  | { readonly kind: 'done'; readonly step: string; readonly at: number }
  /** What is now being done of it takes this many more minutes from now. */
  | { readonly kind: 'late'; readonly step: string; readonly remaining: number }
  /** It was to have begun by now, and has not. */
  | { readonly kind: 'waiting'; readonly step: string }
  /** It is left out. */
  | { readonly kind: 'skipped'; readonly step: string };

/** What is wrong with events against the plan that they are told of; empty: nothing. */
export function eventFaults(plan: Plan, now: number, events: readonly LiveEvent[]): readonly InputFault[] {
  const underWay = plan.steps.filter(({ kind, start, end }) => kind !== 'preheat' && start <= now && now < end);
  const byId = new Map(plan.steps.map((step) => [step.id, step]));
  const leftOut = new Set(plan.lived?.steps.flatMap(({ step, skipped }) => (skipped === true ? [step] : [])));
  return events.flatMap((event, index): InputFault[] => {
    const fault = (found: string, wanted: string, mend: string): InputFault[] => [
      { document: `plan ${plan.id}`, path: `events[${index}]`, found, wanted, mend },
    ];
    const step = byId.get(event.step);
    if (step === undefined)
      return fault(
        event.step,
        'the id of a step of this plan',
        underWay.length === 0
          ? 'the ids are in the plan document'
          : `under way now: ${underWay.map(({ id, name }) => `${id} (${name})`).join(', ')}`,
      );
    if (step.kind === 'preheat') return fault(event.step, 'work of a cook', 'tell of the step that the oven heats for');
    if (leftOut.has(step.id))
      return fault(
        `${step.id}, which was left out`,
        'a step that is not left out',
        'if it was cooked all the same, replan from the plan before that',
      );
    switch (event.kind) {
      case 'started':
      case 'done':
        return event.at > now
          ? fault(`${event.kind} at minute ${event.at}`, `a minute up to now, ${now}`, 'tell it when it has happened')
          : [];
      case 'late':
        return event.remaining < 0 || !Number.isInteger(event.remaining)
          ? fault(`${event.remaining} min`, 'whole minutes from 0 on', 'tell how many more minutes it takes')
          : [];
      case 'waiting':
        return [];
      case 'skipped':
        return skipFault(plan, step, now, fault);
    }
  });
}

function skipFault(
  plan: Plan,
  step: PlannedStep,
  now: number,
  fault: (found: string, wanted: string, mend: string) => InputFault[],
): InputFault[] {
  if (step.kind === 'wash' || step.kind === 'water')
    return fault(`${step.id} left out`, 'a step of a dish', 'washes and water are added where the steps need them');
  const written = plan.components
    .find((component) => component.id === step.component)
    ?.steps.find((each) => each.id === step.step);
  if (written?.cooksThrough !== undefined)
    return fault(
      `${step.id} left out`,
      'a step that raw food does not need',
      `it cooks raw ${written.cooksThrough.raw} through: leave the whole dish out, or cook it`,
    );
  if (step.start < now) return fault(`${step.id} left out`, 'a step that has not begun', 'tell that it is done');
  return [];
}
