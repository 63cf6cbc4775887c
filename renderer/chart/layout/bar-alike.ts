/** The bar of a new plan that stands for one of the plan before: ids tell the minute, and minutes change. */
import type { Bar } from './lane-model.ts';

/** Lane-ish part of an id such as `hands/ada/roots/peel/12`: all but the minute. */
const placeOf = ({ id }: Bar): string => id.slice(0, id.lastIndexOf('/'));

/**
 * @param bar of the plan before
 * @param before all bars of that plan, in their order
 * @param after all bars of the new plan
 * @returns the bar of the same id; else of the same step in the same place, the same in number; else of the same step; else null
 */
export function barAlike(bar: Bar, before: Iterable<Bar>, after: ReadonlyMap<string, Bar>): Bar | null {
  const same = after.get(bar.id);
  if (same !== undefined) return same;
  const ofStep = [...after.values()].filter(({ stepId }) => stepId === bar.stepId);
  const there = ofStep.filter((each) => placeOf(each) === placeOf(bar));
  const number = [...before].filter((each) => placeOf(each) === placeOf(bar)).findIndex(({ id }) => id === bar.id);
  return there[number] ?? there[0] ?? ofStep[0] ?? null;
}
