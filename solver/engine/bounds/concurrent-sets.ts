/**
 * Which tasks can be in progress at one minute: the maximal sets that keep every capacity and hold no two tasks that must stand apart.
 *
 * Sources: Mingozzi, Maniezzo, Ricciardelli, Bianco (1998), An exact algorithm for the resource-constrained project scheduling problem
 * based on a new mathematical formulation; Bron & Kerbosch (1973) for telling maximal sets by what was tried before.
 */

export interface ConcurrencyQuestion {
  /** Amounts by task and resource. */
  readonly amounts: readonly (readonly number[])[];
  /** Capacity of each resource. */
  readonly capacities: readonly number[];
  /** Whether two tasks are never in progress at one minute. */
  readonly apart: (a: number, b: number) => boolean;
}

/** Sets looked at before giving up, and most maximal ones: a linear program of more is not worth its time. */
const MOST_LOOKED_AT = 40_000;
const MOST_SETS = 4_000;

/** @returns the maximal sets of task numbers; null where there are too many */
export function concurrentSets({ amounts, capacities, apart }: ConcurrencyQuestion): number[][] | null {
  const tasks = amounts.map((_, task) => task);
  const meets = tasks.map((a) =>
    tasks.map((b) => a !== b && !apart(a, b) && fits(amounts[a]!, amounts[b]!, capacities)),
  );
  const found: number[][] = [];
  const chosen: number[] = [];
  let looked = 0;
  /** `open` can still join the chosen ones; `tried` could, too, but all sets with it are found. */
  const widen = (used: readonly number[], open: readonly number[], tried: readonly number[]): boolean => {
    if (++looked > MOST_LOOKED_AT || found.length > MOST_SETS) return false;
    if (open.length === 0 && tried.length === 0 && chosen.length > 0) found.push([...chosen]);
    for (const [at, task] of open.entries()) {
      const more = used.map((amount, r) => amount + amounts[task]![r]!);
      const joins = (other: number): boolean => meets[task]![other]! && fits(more, amounts[other]!, capacities);
      chosen.push(task);
      const before = [...tried, ...open.slice(0, at)];
      const fine = widen(more, open.slice(at + 1).filter(joins), before.filter(joins));
      chosen.pop();
      if (!fine) return false;
    }
    return true;
  };
  const alone = tasks.filter((task) => amounts[task]!.every((amount, r) => amount <= capacities[r]!));
  return widen(
    capacities.map(() => 0),
    alone,
    [],
  )
    ? found
    : null;
}

function fits(used: readonly number[], more: readonly number[], capacities: readonly number[]): boolean {
  return capacities.every((capacity, r) => used[r]! + more[r]! <= capacity);
}
