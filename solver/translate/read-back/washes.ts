/** The washes that a solution takes, of things and of hands. */
import type { PlannedStep } from '../../kitchen/plan.ts';
import type { Operation, Translation } from '../legend.ts';
import { addedWork, SINK } from './added-work.ts';
import type { Reading } from './reading.ts';

export function washes(t: Translation, reading: Reading): readonly PlannedStep[] {
  return t.washes.flatMap((wash): PlannedStep[] => {
    const option = reading.option(wash.choice);
    if (option === 0) return [];
    const operation: Operation = {
      task: wash.task,
      who: { choice: null, people: [wash.people[option - 1]!] },
      minutes: 0,
      name: null,
      probe: false,
      check: false,
    };
    const thing = wash.place?.id ?? wash.people[option - 1]!;
    const name = wash.place === null ? 'wash hands' : `wash ${nameOfThing(t, wash.place.id)}`;
    return [
      addedWork(reading, operation, { id: wash.task, kind: 'wash', component: thing, step: 'wash', name }, [
        SINK,
        ...(wash.place === null ? [] : [wash.place]),
      ]),
    ];
  });
}

function nameOfThing(t: Translation, id: string): string {
  const { pans, trays, boards, bowls, tools } = t.kitchen;
  return [...pans, ...trays, ...boards, ...bowls, ...tools].find((thing) => thing.id === id)?.name ?? id;
}
