import { describe, expect, it } from 'vitest';
import { ThetaTree } from '../../../../../../solver/engine/learning/propagators/disjunctive/theta-tree.ts';
import { seeded } from '../../../../../support/seeded.ts';

interface Task {
  readonly earliest: number;
  readonly length: number;
}

/** Earliest completion by its definition: the tasks one after the other, each as soon as it may start. */
const oneAfterTheOther = (tasks: readonly Task[]): number =>
  [...tasks]
    .sort((a, b) => a.earliest - b.earliest)
    .reduce((end, { earliest, length }) => Math.max(end, earliest) + length, -Infinity);

describe('the Θ-tree', () => {
  it('has work of 6 minutes from 25 on and 4 from 30 on done at 35, whatever ends long before', () => {
    const tree = new ThetaTree(3);
    tree.clear(3);
    tree.insert(0, 0, 5);
    expect(tree.ect).toBe(5);
    tree.insert(2, 30, 4);
    expect(tree.ect).toBe(34);
    tree.insert(1, 25, 6);
    expect(tree.ect).toBe(35);
    expect(tree.ectWithout(2)).toBe(31);
  });

  it('tells when the tasks put in can all be done, with each of them left out too, and starts anew when cleared', () => {
    const chance = seeded(1);
    const tree = new ThetaTree(40);
    for (let round = 0; round < 300; round++) {
      const places = chance.int(1, 40);
      const tasks = Array.from({ length: places }, () => ({
        earliest: chance.int(-30, 30),
        length: chance.int(1, 9),
      })).sort((a, b) => a.earliest - b.earliest);
      tree.clear(places);
      expect(tree.ect).toBeLessThan(-1_000_000);
      const inside: number[] = [];
      for (const place of chance.sample([...tasks.keys()], chance.int(1, places))) {
        tree.insert(place, tasks[place]!.earliest, tasks[place]!.length);
        inside.push(place);
        expect(tree.ect).toBe(oneAfterTheOther(inside.map((p) => tasks[p]!)));
      }
      for (const out of inside.slice(1))
        expect(tree.ectWithout(out)).toBe(
          oneAfterTheOther(inside.filter((place) => place !== out).map((place) => tasks[place]!)),
        );
    }
  });
});
