/** A problem with some of the asker's lags taken out. */
import type { Lag, Problem } from '../engine/problem.ts';

/** @param chosen told each lag that names a requirement, and the name */
export const withoutLags =
  (chosen: (lag: Lag, requirement: string) => boolean) =>
  (problem: Problem): Problem => ({
    ...problem,
    lags: problem.lags.filter((lag) => lag.requirement === undefined || !chosen(lag, lag.requirement)),
  });
