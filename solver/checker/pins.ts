/** Rule 10: what the user pinned is where it was pinned; the table and the work of earlier days keep their times. */
import { minutesDown, minutesUp } from '../kitchen/scaling.ts';
import { readyStep } from '../kitchen/session-components.ts';
import { durationMinutes } from '../kitchen/values.ts';
import { called, type Reading, type StepReading } from './reading.ts';
import type { Violation } from './violation.ts';

const rule = 10 as const;
/** A dish for the table is ready at most so long before it, minutes, unless the session says otherwise. */
const TABLE_ALLOWANCE = 5;

const idsOf = ({ pieces }: StepReading): readonly string[] => pieces.map(({ planned }) => planned.id);
const told = (message: string, steps: readonly string[], minute: number): Violation => ({
  rule,
  message,
  steps,
  minute,
});

/** Ids of all places that a step has, of its own or by a hold around it; a rack counts as its oven too. */
function placesOf(reading: Reading, { instance, pieces, start, end }: StepReading): ReadonlySet<string> {
  const { component, batch, batched } = instance;
  const own = pieces.flatMap(({ planned }) => planned.places);
  const held = reading.holds.flatMap(({ use }) =>
    use !== null &&
    use.component.id === component.id &&
    !(use.batched && batched && use.batch !== batch) &&
    use.place.from < end &&
    use.place.until > start
      ? [use.place]
      : [],
  );
  return new Set([...own, ...held].flatMap(({ id, oven }) => (oven === undefined ? [id] : [id, oven])));
}

function checkPinned(reading: Reading): readonly Violation[] {
  const { plan, clock } = reading;
  return (plan.session.pins ?? []).flatMap((pin) => {
    const step = reading.steps.find(
      ({ instance, pieces }) =>
        pieces.length > 0 &&
        instance.component.id === pin.component &&
        instance.step.id === pin.step &&
        instance.batch === (pin.batch ?? 1),
    );
    if (step === undefined) return [];
    const name = called(step.pieces[0]!.planned);
    const violations: Violation[] = [];
    if (pin.start !== undefined && step.start !== durationMinutes(pin.start))
      violations.push(
        told(
          `${name} is pinned to ${clock.at(durationMinutes(pin.start))} and begins at ${clock.at(step.start)}.`,
          idsOf(step),
          step.start,
        ),
      );
    const others = step.pieces
      .flatMap(({ planned }) => planned.segments)
      .filter(({ hands, person }) => hands === 'on' && person !== pin.person);
    if (pin.person !== undefined && others.length > 0)
      violations.push(
        told(
          `${name} is pinned to ${pin.person}, and ${others[0]!.person ?? 'nobody'} does it at ${clock.at(others[0]!.start)}.`,
          idsOf(step),
          others[0]!.start,
        ),
      );
    if (pin.place !== undefined && !placesOf(reading, step).has(pin.place))
      violations.push(told(`${name} is pinned to ${pin.place} and is not there.`, idsOf(step), step.start));
    return violations;
  });
}

function checkTable(reading: Reading): readonly Violation[] {
  const { plan, clock } = reading;
  const { table } = plan.session;
  if (table === undefined) return [];
  const at = minutesDown(durationMinutes(table.at));
  const allowance = table.allowance === undefined ? TABLE_ALLOWANCE : minutesDown(durationMinutes(table.allowance));
  const violations = table.dishes.flatMap((dish): readonly Violation[] => {
    const component = reading.dishes.find((each) => each.component.id === dish)?.component;
    if (component === undefined) return [];
    const ready = reading.steps.filter(
      ({ instance, pieces }) =>
        pieces.length > 0 && instance.component.id === dish && instance.step.id === readyStep(component),
    );
    if (ready.length === 0) return [];
    const end = Math.max(...ready.map((step) => step.end));
    if (at - allowance <= end && end <= at) return [];
    const message = `${component.name} is to be on the table at ${clock.at(at)}, ready from ${clock.at(at - allowance)}, and is ready at ${clock.at(end)}.`;
    return [told(message, ready.flatMap(idsOf), end)];
  });
  if (table.othersMayRunPast === true) return violations;
  const late = reading.steps
    .filter(({ instance }) => instance.inFinish)
    .flatMap(({ pieces }) => pieces.flatMap(({ planned }) => planned))
    .filter(({ segments }) => segments.some(({ hands, end }) => hands === 'on' && end > at))
    .filter(({ component }) => !table.dishes.includes(component))
    .map((planned) =>
      told(
        `${called(planned)} runs past the table at ${clock.at(at)}, which this session does not allow.`,
        [planned.id],
        planned.end,
      ),
    );
  return [...violations, ...late];
}

function checkAhead(reading: Reading): readonly Violation[] {
  const { plan, clock } = reading;
  return reading.dishes.flatMap(({ component }) =>
    (component.ahead ?? []).flatMap((ahead): readonly Violation[] => {
      const day = plan.ahead.find((each) => each.component === component.id && each.step === ahead.id);
      const until = reading.steps.filter(
        ({ instance, pieces }) =>
          pieces.length > 0 && instance.component.id === component.id && instance.step.id === ahead.until,
      );
      if (day === undefined || until.length === 0) return [];
      const start = clock.onDay(-ahead.daysBefore, ahead.at);
      const name = `“${ahead.name}” of ${component.name}`;
      if (day.start !== start)
        return [
          told(
            `${name} is for ${ahead.at}, ${ahead.daysBefore} days before, and is planned for another time.`,
            [],
            day.start,
          ),
        ];
      const end = start + minutesUp(durationMinutes(ahead.hands));
      const shortest = minutesUp(durationMinutes(ahead.shortest));
      const longest = minutesDown(durationMinutes(ahead.longest));
      return until
        .filter((step) => step.start - end < shortest || step.start - end > longest)
        .map((step) =>
          told(
            `${name} must wait ${shortest} to ${longest} min before ${called(step.pieces[0]!.planned)}, and waits ${step.start - end}.`,
            idsOf(step),
            step.start,
          ),
        );
    }),
  );
}

export function checkPins(reading: Reading): readonly Violation[] {
  return [...checkPinned(reading), ...checkTable(reading), ...checkAhead(reading)];
}
