/** The steps of a plan as the units that a replan counts, and a plan without the work of some of them. */
import { wholeId, type Plan, type PlannedStep } from '../../kitchen/plan.ts';
import type { Translated } from '../../translate/legend.ts';
import type { PlannedUnit } from './history.ts';
import { stepUnits } from './units.ts';

/** The plan with steps that take no time and nothing. */
export function withoutWork(plan: Plan, left: ReadonlySet<string>): Plan {
  const seen = new Set<string>();
  return {
    ...plan,
    steps: plan.steps.flatMap((step): PlannedStep[] => {
      const id = wholeId(step);
      if (!left.has(id)) return [step];
      if (seen.has(id)) return [];
      seen.add(id);
      const { piece: _, ...whole } = step;
      const at = { start: step.start, end: step.start };
      return [{ ...whole, id, ...at, segments: [{ hands: 'off', ...at }], places: [] }];
    }),
  };
}

/** The units with their segments as planned. */
export function plannedUnits(translated: Translated, plan: Plan): readonly PlannedUnit[] {
  const byId = new Map<string, PlannedStep[]>();
  for (const step of plan.steps) {
    if (step.kind === 'preheat') continue;
    const id = wholeId(step);
    byId.set(id, [...(byId.get(id) ?? []), step]);
  }
  return stepUnits(translated).map((unit): PlannedUnit => {
    const steps = (byId.get(unit.id) ?? []).sort((a, b) => a.start - b.start);
    const inPieces = steps.length > 1 || steps.some(({ piece }) => piece !== undefined);
    const parts = steps.flatMap(({ segments }) => segments.filter(({ check }) => check !== true));
    return {
      ...unit,
      inPieces,
      parts: parts
        .map(({ start, end, hands }) => ({ start, end, byHand: hands === 'on' }))
        .sort((a, b) => a.start - b.start || a.end - b.end),
    };
  });
}
