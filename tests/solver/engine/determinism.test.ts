import { describe, expect, it } from 'vitest';
import type { Outcome, SolveOptions, TraceRow } from '../../../solver/engine/outcome.ts';
import type { Problem } from '../../../solver/engine/problem.ts';
import { engines } from '../../benchmarks/engines.ts';
import { referenceProblem } from '../../support/random-problem-reference.ts';
import { kitchenLike } from './kitchen-like-problem.ts';

const problems: readonly Problem[] = [
  ...[3, 105, 153].map(referenceProblem),
  kitchenLike({ seed: 3, steps: 12, people: 2 }),
  kitchenLike({ seed: 5, steps: 24, people: 2 }),
];

/** An outcome with all that was told on the way, as text. */
function told(
  name: string,
  problem: Problem,
  options: Pick<SolveOptions, 'seed' | 'effort' | 'shouldStop'>,
): { readonly text: string; readonly outcome: Outcome } {
  const rows: TraceRow[] = [];
  const outcome: Outcome = engines[name]!(problem, { ...options, onProgress: (row) => rows.push(row) });
  return { outcome, text: JSON.stringify({ outcome, rows }) };
}

/** Effort by each engine's own measure: some problems are proved in it, the largest are cut off. */
const EFFORT: Readonly<Record<string, number>> = { together: 65_000, ensemble: 20_000, learning: 1_000_000 };

describe.each(Object.keys(engines))('the engine "%s"', (name) => {
  const effort = EFFORT[name]!;

  it('gives the same outcome, bit for bit, to the same problem, seed and effort, and spends little more', () => {
    let cut = 0;
    let proved = 0;
    for (const problem of problems) {
      const once = told(name, problem, { seed: 7, effort });
      // A solve of something else in between, and being asked whether to stop, leave no trace.
      told(name, referenceProblem(11), { seed: 1, effort: 5_000 });
      const again = told(name, structuredClone(problem), { seed: 7, effort, shouldStop: () => false });
      expect(again.text, problem.name).toBe(once.text);
      expect(once.outcome.work, problem.name).toBeLessThan(effort * 1.5);
      if (once.outcome.kind === 'bounded' && once.outcome.work >= effort) cut++;
      else proved++;
    }
    expect([cut > 0, proved > 0]).toEqual([true, true]);
  });
});
