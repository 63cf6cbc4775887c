import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Chain } from '../../../../solver/engine/propagation/chain.ts';
import { Trail } from '../../../../solver/engine/propagation/trail.ts';

const SIZE = 6;

describe('a chain of tasks', () => {
  it('has, newest first, what was put in and not taken out, however often that was undone', () => {
    const steps = fc.array(
      fc.record({ what: fc.constantFrom('turn', 'turn', 'turn', 'mark', 'undo'), task: fc.nat(SIZE - 1) }),
      { maxLength: 40 },
    );
    fc.assert(
      fc.property(steps, (done) => {
        const trail = new Trail(2 + Chain.cellsOf(SIZE));
        const chain = new Chain(trail, 2, SIZE);
        const met = (): number[] => {
          const tasks: number[] = [];
          for (let task = chain.first(); task >= 0; task = chain.next(task)) tasks.push(task);
          return tasks;
        };
        let plain: readonly number[] = [];
        const marks: { mark: number; plain: readonly number[] }[] = [];
        for (const { what, task } of done) {
          if (what === 'mark') marks.push({ mark: trail.mark(), plain });
          else if (what === 'undo') {
            const last = marks.pop();
            if (last === undefined) continue;
            trail.undo(last.mark);
            ({ plain } = last);
          } else if (chain.has(task)) {
            chain.remove(task, plain[plain.indexOf(task) - 1] ?? -1);
            plain = plain.filter((other) => other !== task);
          } else {
            chain.add(task);
            plain = [task, ...plain];
          }
          expect(met()).toEqual(plain);
          for (let t = 0; t < SIZE; t++) expect(chain.has(t)).toBe(plain.includes(t));
        }
      }),
    );
  });
});
