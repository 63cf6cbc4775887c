/** The limits that a way to go on breaks, as limits of the problem that was asked. */
import type { Solution } from '../outcome.ts';
import type { ReplanAsked } from './asked.ts';
import { isOverIn } from './least-bad.ts';
import type { LetGo } from './let-go.ts';
import type { BrokenLimit } from './outcome.ts';
import type { Settled } from './settled.ts';

/** By lag of the settled problem, as far as it does not tell a fact: its position in the problem asked. */
export const askedLags = ({ problem }: ReplanAsked, { broken }: Settled): readonly number[] => {
  const gone = new Set(broken);
  return problem.lags.flatMap((_, index) => (gone.has(index) ? [] : [index]));
};

/** @returns a function: whether a lag of the settled problem tells a fact, or is one that the asker never lets go */
export function keptLags(asked: ReplanAsked, settled: Settled): (lag: number) => boolean {
  const original = askedLags(asked, settled);
  return (lag) => lag >= settled.factLags || asked.kept?.has(original[lag]!) === true;
}

/**
 * Those that the past has broken, and of those let go the ones that a way to go on does not keep.
 *
 * @param solution the way to go on; null: none, and all that were let go are told
 */
export function limitsBroken(
  asked: ReplanAsked,
  settled: Settled,
  letGo: LetGo,
  solution: Solution | null = null,
): readonly BrokenLimit[] {
  const lagLimit = (lag: number): BrokenLimit => {
    const { requirement } = asked.problem.lags[lag]!;
    return { kind: 'lag', lag, ...(requirement === undefined ? {} : { requirement }) };
  };
  const original = askedLags(asked, settled);
  const isOver = solution === null ? () => true : isOverIn(settled.problem, solution);
  return [
    ...settled.broken.map(lagLimit),
    ...[...letGo.lags.keys()].filter((lag) => isOver({ kind: 'lag', lag })).map((lag) => lagLimit(original[lag]!)),
    ...[...letGo.lengths.keys()]
      .filter((task) => isOver({ kind: 'length', task }))
      .map((task) => ({ kind: 'length', task }) as const),
    ...(letGo.horizon > 0 ? [{ kind: 'horizon' } as const] : []),
    ...[...letGo.hours].map((resource) => ({ kind: 'calendar', resource }) as const),
  ];
}
