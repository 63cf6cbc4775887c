/** Planned steps as units of the problem's tasks, so that a step whose person, place or order changes counts once. */
import type { Unit } from '../../engine/replan/asked.ts';
import type { Translated } from '../../translate/legend.ts';

export interface StepUnit extends Unit {
  /** Tasks whose end follows the work of others: the pan of a hold, the heat under a pool. */
  readonly elastic: readonly number[];
}

/**
 * @returns a unit for each step of a dish (with the holds that it begins), each wash, and each piece of work on a pool (with the pan,
 *   the burner and the heat that it begins). Ovens are in none: that one is on is no change of a step
 */
export function stepUnits({ problem, translation: t }: Translated): readonly StepUnit[] {
  const position = new Map(problem.tasks.map((task, index) => [task.id, index]));
  const at = (id: string): readonly number[] => {
    const index = position.get(id);
    return index === undefined ? [] : [index];
  };
  const byKey = new Map<string, number[]>();
  problem.tasks.forEach((task, index) => {
    const key = task.id.replace(/[:~#].*$/, '');
    byKey.set(key, [...(byKey.get(key) ?? []), index]);
  });
  const units = t.steps.map((legend): StepUnit => {
    const holds = t.holds
      .filter(
        ({ instance }) =>
          instance.component.id === legend.instance.component.id &&
          instance.hold.from === legend.instance.step.id &&
          (!instance.batched || instance.batch === legend.instance.batch),
      )
      .flatMap((hold) => at(hold.task));
    return { id: legend.instance.id, tasks: [...(byKey.get(legend.key) ?? []), ...holds], elastic: holds };
  });
  const washes = t.washes.map((wash): StepUnit => ({ id: wash.task, tasks: at(wash.task), elastic: [] }));
  const pools = t.pools.flatMap(({ pool, span, boils, empty }): readonly StepUnit[] => [
    ...boils.flatMap((boil, index): readonly StepUnit[] => {
      const heat = at(boil.heat);
      if (boil.fill !== null) {
        const elastic = [...at(span), ...at(`${pool.id}/burner`), ...heat];
        return [{ id: `${pool.id}/fill`, tasks: [...at(boil.fill.task), ...elastic], elastic }];
      }
      return [
        { id: `${pool.id}/reboil.${index + 1}`, tasks: [...at(boil.again!.task), ...heat], elastic: heat },
        { id: `${pool.id}/change.${index + 1}`, tasks: at(boil.fresh!.task), elastic: [] },
      ];
    }),
    { id: `${pool.id}/empty`, tasks: at(empty.task), elastic: [] },
  ]);
  return [...units, ...washes, ...pools];
}
