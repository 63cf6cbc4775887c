/** Whether a component document fits together: its steps, orders, holds and amounts name what is there. */
import { coolingTroubles } from '../../../solver/food/cooling-troubles.ts';
import type { Component } from '../../../solver/kitchen/component.ts';
import type { Need, Segment, Step } from '../../../solver/kitchen/step.ts';
import { pathText, valueText } from '../issue-faults.ts';
import { allergenFindings } from './allergen-findings.ts';
import { foodFindings } from './food-findings.ts';
import { crossed, crossedDurations, placed, repeatedIds, unknownId, unknownIds, type Finding } from './finding.ts';

type Keys = readonly (string | number)[];
type Method = Pick<Step, 'segments' | 'needs'>;

const STEP = 'a step of this component';
const INGREDIENT = 'an ingredient of this component';

/** Findings of a component that its schema accepted; empty: it fits together. */
export function componentFindings(component: Component): readonly Finding[] {
  const steps = component.steps.map(({ id }) => id);
  const ingredients = component.ingredients.map(({ id }) => id);
  const soaks = [...(component.ahead ?? []).map(({ id }) => id), ...steps];
  return [
    ...repeatedIds(placed(component.ingredients, 'ingredients')),
    ...repeatedIds([
      ...placed(component.steps, 'steps'),
      ...placed(component.ahead ?? [], 'ahead'),
      ...placed(component.later ?? [], 'later'),
    ]),
    ...repeatedIds(placed(component.holds ?? [], 'holds')),
    ...component.ingredients.flatMap((ingredient, index) => allergenFindings(ingredient, ['ingredients', index])),
    ...component.ingredients.flatMap((ingredient, index) => foodFindings(ingredient, ['ingredients', index])),
    ...component.ingredients.flatMap(({ toxin }, index) => [
      ...unknownId(toxin?.soak, soaks, 'a step of this component, or of the days before', [
        'ingredients',
        index,
        'toxin',
        'soak',
      ]),
      ...unknownId(toxin?.drain, steps, STEP, ['ingredients', index, 'toxin', 'drain']),
      ...unknownId(toxin?.boil, steps, STEP, ['ingredients', index, 'toxin', 'boil']),
    ]),
    ...component.steps.flatMap((step, index) => stepFindings(step, ['steps', index], steps, ingredients)),
    ...coolingTroubles(component),
    ...(component.holds ?? []).flatMap((hold, index) => [
      ...unknownId(hold.from, steps, STEP, ['holds', index, 'from']),
      ...unknownId(hold.to, steps, STEP, ['holds', index, 'to']),
    ]),
    ...unknownIds(component.batches?.steps, steps, STEP, ['batches', 'steps']),
    ...(component.ahead ?? []).flatMap((step, index) => [
      ...unknownId(step.until, steps, STEP, ['ahead', index, 'until']),
      ...crossedDurations(step.shortest, step.longest, ['ahead', index, 'shortest']),
    ]),
    ...unknownId(component.ready, steps, STEP, ['ready']),
    ...unknownId(component.fridge?.from, steps, STEP, ['fridge', 'from']),
  ];
}

function stepFindings(
  step: Step,
  path: Keys,
  steps: readonly string[],
  ingredients: readonly string[],
): readonly Finding[] {
  return [
    ...methodFindings(step, path, ingredients),
    ...(step.alternatives ?? []).flatMap((way, index) =>
      methodFindings(way, [...path, 'alternatives', index], ingredients),
    ),
    ...unknownIds(step.touches, ingredients, INGREDIENT, [...path, 'touches']),
    ...(step.after ?? []).flatMap((after, index) => [
      ...(after.step.includes('/') ? [] : unknownId(after.step, steps, STEP, [...path, 'after', index, 'step'])),
      ...crossedDurations(after.shortest, after.longest, [...path, 'after', index, 'shortest']),
    ]),
  ];
}

function methodFindings(method: Method, path: Keys, ingredients: readonly string[]): readonly Finding[] {
  return [
    ...method.segments.flatMap((segment, index) => segmentFindings(segment, [...path, 'segments', index], ingredients)),
    ...method.needs.flatMap((need, index) => {
      const at = [...path, 'needs', index];
      return [
        ...(need.use === 'oven' ? crossed(need.leastC, need.mostC, '°C', [...at, 'leastC']) : []),
        ...loadFindings(method, index, [...at, 'load']),
        ...(need.during === undefined ? [] : duringFindings(need.during, method.segments.length, [...at, 'during'])),
      ];
    }),
  ];
}

/** A cold load that would lengthen nothing: in the afterheat, in no hands-off segment, or beside another in the same one. */
function loadFindings({ segments, needs }: Method, index: number, path: Keys): readonly Finding[] {
  const firstWait = (need: Need): number | null => {
    if (need.use !== 'oven' || need.load === undefined || need.afterheat === true) return null;
    const { from, to } = need.during ?? { from: 0, to: segments.length - 1 };
    const at = segments.findIndex(
      (segment, number) => number >= from && number <= to && segment.hands === 'off' && segment.boilMl === undefined,
    );
    return at < 0 ? null : at;
  };
  const need = needs[index]!;
  if (need.use !== 'oven' || need.load === undefined) return [];
  const told = (found: string, wanted: string, mend: string): readonly Finding[] => [
    { path: pathText(path), found, wanted, mend },
  ];
  if (need.afterheat === true)
    return told('a cold load in the afterheat', 'a load for an oven that heats', 'leave the load out');
  const own = firstWait(need);
  if (own === null)
    return told(
      'a cold load, and no hands-off segment to lengthen',
      'a hands-off segment in the oven that waits for no boil',
      'add the segment, or leave the load out',
    );
  return needs.slice(0, index).some((other) => firstWait(other) === own)
    ? told('a second cold load in one segment', 'one load a segment', 'write the mass of both into the first')
    : [];
}

function segmentFindings(segment: Segment, path: Keys, ingredients: readonly string[]): readonly Finding[] {
  if (segment.hands === 'on') return unknownId(segment.work.of, ingredients, INGREDIENT, [...path, 'work', 'of']);
  return [
    ...crossedDurations(segment.shortest, segment.longest, [...path, 'shortest']),
    ...(segment.checks ?? []).flatMap((check, index) =>
      unknownId(check.work.of, ingredients, INGREDIENT, [...path, 'checks', index, 'work', 'of']),
    ),
  ];
}

function duringFindings(
  during: { readonly from: number; readonly to: number },
  segments: number,
  path: Keys,
): readonly Finding[] {
  if (during.from <= during.to && during.to < segments) return [];
  return [
    {
      path: pathText(path),
      found: `segments ${valueText(during.from)} to ${valueText(during.to)}`,
      wanted: segments === 1 ? 'segment 0, the only one' : `segments in order, from 0 to ${segments - 1}`,
      mend: 'number the segments of this step from 0',
    },
  ];
}
