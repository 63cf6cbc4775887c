/**
 * Rule 4, each thing: a step has every place that it needs, one that suits it, for just the time it needs it; a hold lasts from
 * the start of its first step to the end of its last; a pan stands on a burner of its size.
 */
import { meetNeeds, needSpan } from './meet-needs.ts';
import { called, calledUse, stepsOfUse, type Reading, type StepReading, type Use } from './reading.ts';
import { mismatches, placeKind } from './suits.ts';
import type { Violation } from './violation.ts';

const rule = 4 as const;

function checkStep({ wholes }: StepReading, reading: Reading): readonly Violation[] {
  const { plan, clock } = reading;
  return wholes.flatMap((whole) => {
    const { planned, way } = whole.piece;
    if (way === null) return [];
    const name = called(planned);
    const { met, unmet, spare } = meetNeeds(plan, whole, way);
    const told = (message: string, minute: number): Violation => ({ rule, message, steps: [planned.id], minute });
    return [
      ...unmet.map((need) => told(`${name} needs a ${placeKind(need)} and has none.`, whole.start)),
      ...spare.map((place) => told(`${name} holds ${place.id}, which it does not need.`, place.from)),
      ...met.flatMap(({ need, place }) => {
        const { start, end } = needSpan(whole, need);
        const wrong = mismatches(plan.kitchen, plan.session, need, place).map((what) =>
          told(`${name} ${what}.`, place.from),
        );
        if (place.from === start && place.until === end) return wrong;
        const has = clock.span(place.from, place.until);
        return [...wrong, told(`${name} needs ${place.id} ${clock.span(start, end)} and has it ${has}.`, place.from)];
      }),
    ];
  });
}

function checkHolds(reading: Reading): readonly Violation[] {
  const { plan, clock } = reading;
  const known = new Set(reading.holds.map(({ planned }) => planned));
  const strange = plan.holds
    .filter((planned) => !known.has(planned))
    .map(({ component, hold, place }) => ({
      rule: rule,
      message: `${component} holds ${place.id} for “${hold}” once too often, or never asked to.`,
      steps: [],
      minute: place.from,
    }));
  const wrong = reading.holds.flatMap(({ instance, span, use }): readonly Violation[] => {
    const { component, hold, need } = instance;
    if (span === null) return [];
    const steps = use === null ? [] : stepsOfUse(use, reading);
    const told = (message: string): Violation => ({ rule, message, steps, minute: span.start });
    const name = `${component.name} (${hold.id})`;
    if (use === null) return [told(`${name} keeps a ${placeKind(need)} across its steps, and none is planned.`)];
    const { place } = use;
    const misfits = mismatches(plan.kitchen, plan.session, need, place).map((what) => told(`${name} ${what}.`));
    if (place.from === span.start && place.until === span.end) return misfits;
    const [must, has] = [clock.span(span.start, span.end), clock.span(place.from, place.until)];
    return [...misfits, told(`${name} must keep ${place.id} ${must} and has it ${has}.`)];
  });
  return [...strange, ...wrong];
}

/** The pan over a burner: the step's own, or that of a hold around it. */
function pansOver(burner: Use, reading: Reading): readonly Use[] {
  const pans = reading.uses.filter(
    ({ need, component, place, batch, batched }) =>
      need.use === 'pan' &&
      component.id === burner.component.id &&
      !(batched && burner.batched && batch !== burner.batch) &&
      place.from < burner.place.until &&
      place.until > burner.place.from,
  );
  const own = pans.filter(({ step }) => step !== null && step === burner.step);
  return own.length > 0 ? own : pans.filter(({ hold }) => hold !== null);
}

function checkPans(reading: Reading): readonly Violation[] {
  const { plan, clock } = reading;
  const { pans, hob } = plan.kitchen;
  const fits = (panId: string, burnerId: string): boolean => {
    const pan = pans.find(({ id }) => id === panId);
    const burner = hob.burners.find(({ id }) => id === burnerId);
    if (pan === undefined || burner === undefined) return true;
    return burner.leastPanCm <= pan.acrossCm && pan.acrossCm <= burner.mostPanCm;
  };
  const underSteps = reading.uses
    .filter(({ need }) => need.use === 'burner')
    .flatMap((burner): readonly Violation[] => {
      const { id, from } = burner.place;
      const told = (message: string): readonly Violation[] => [
        { rule, message, steps: stepsOfUse(burner, reading), minute: from },
      ];
      const over = pansOver(burner, reading);
      if (over.length === 0) return told(`${calledUse(burner)} has ${id} at ${clock.at(from)} and no pan on it.`);
      if (over.some(({ place }) => fits(place.id, id))) return [];
      return told(`${over[0]!.place.id} does not fit ${id}, where ${calledUse(burner)} has it at ${clock.at(from)}.`);
    });
  const underPools = plan.pools.flatMap(({ pool, pan, boils }) =>
    boils
      .filter(({ burner }) => !fits(pan, burner))
      .map(({ burner, onHeat }) => ({
        rule: rule,
        message: `${pan} with ${pool} does not fit ${burner}, where it stands at ${clock.at(onHeat)}.`,
        steps: [],
        minute: onHeat,
      })),
  );
  return [...underSteps, ...underPools];
}

export function checkPlaces(reading: Reading): readonly Violation[] {
  return [...reading.steps.flatMap((step) => checkStep(step, reading)), ...checkHolds(reading), ...checkPans(reading)];
}
