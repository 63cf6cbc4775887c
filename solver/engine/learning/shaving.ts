/**
 * Narrows domains by failed literals: where a variable at its bound is refuted by propagation alone, the bound moves on for good. What was
 * learned since the last time is often enough to refute a value that stood then.
 *
 * Sources: Carlier & Pinson (1994), Adjustment of heads and tails for the job-shop problem; Lynce & Marques-Silva (2003), Probing-based
 * preprocessing techniques for propositional satisfiability.
 */
import type { Core } from './core.ts';

export class Shaving {
  private slot = 0;

  /**
   * Tries each bound of each variable at most once, from where the last run ended. Leaves the core at level 0, dead where nothing is left.
   * @param workLimit the value of the core's `work` at which to stop
   */
  run(core: Core, workLimit: number): void {
    const { trail } = core;
    const slots = 2 * trail.variables;
    for (let tried = 0; tried < slots && core.work < workLimit && !core.dead; tried++) {
      this.slot = (this.slot + 1) % slots;
      const { slot } = this;
      let refuted = true;
      while (refuted && !core.dead && trail.root[slot]! + trail.root[slot ^ 1]! < 0)
        refuted = core.shaves(trail.literal(slot ^ 1, -trail.root[slot]!));
    }
    core.backtrack(0);
  }
}
