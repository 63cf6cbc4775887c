/**
 * Limits of a running plan that break whatever is chosen, told without any search: the fixed past and the gaps that surely hold ask for
 * more time than they give.
 *
 * Example: bread out of the oven at minute 10 is to be packed within 30; what it is packed with is ready at 50 at the earliest. The
 * contradiction runs origin → ready at 50 → packed → at most 30 before it → out at 10 → origin, 10 minutes too long. The longest gap
 * goes, by 10 minutes, and all else can still be kept.
 */
import { askedLags } from './broken-limits.ts';
import { finishOf } from './carry-on.ts';
import type { Clash } from '../outcome.ts';
import type { OrderArc } from '../explain/plan-order.ts';
import type { ReplanAsked } from './asked.ts';
import { giveWay, readinessAmong, type LetGo, type Ready } from './let-go.ts';
import type { Settled } from './settled.ts';
import { clashOf, sureGaps } from './sure-gaps.ts';

export interface SurelyBroken {
  readonly letGo: LetGo;
  /** False where even work, order and facts contradict each other. */
  readonly possible: boolean;
  /** The first contradiction; null where there is none. */
  readonly clash: Clash | null;
  /** No way to go on finishes earlier, minutes. */
  readonly leastFinish: number;
  /** How readily limits of this question go. */
  readonly ready: Ready;
}

export function surelyBroken(asked: ReplanAsked, settled: Settled): SurelyBroken {
  const { problem, factLags } = settled;
  const original = askedLags(asked, settled);
  const isGuarded = (lag: number): boolean => asked.guarded?.has(original[lag]!) === true;
  /** What says when a point was, or that it lies ahead; and what the asker keeps. */
  const isFact = ({ why }: OrderArc): boolean =>
    why.kind === 'lag' && (why.lag >= factLags || asked.kept?.has(original[why.lag]!) === true);
  const arcs = sureGaps(settled);
  const ready = readinessAmong(arcs, isFact, isGuarded);
  const lower = new Int32Array(1 + 2 * problem.tasks.length);
  const { times, letGo, met } = giveWay(arcs, lower, 4 * problem.horizon, ready);
  const [first] = met;
  return {
    letGo,
    possible: times !== null,
    clash: first === undefined ? null : clashOf(problem, first),
    leastFinish: times === null ? 0 : finishOf(asked.finish, times),
    ready,
  };
}
