/** The planned form of a step: its segments with who does them, and the places it holds. */
import type { PlannedPlace, PlannedSegment, PlannedStep } from '../../kitchen/plan.ts';
import type { NeedLegend, Operation, StepLegend } from '../legend.ts';
import type { Reading } from './reading.ts';

const segmentOf = (reading: Reading, operation: Operation): PlannedSegment => ({
  hands: 'on',
  ...(operation.name === null ? {} : { name: operation.name }),
  ...reading.sure(operation.task),
  person: reading.person(operation),
  ...(operation.check ? { check: true } : {}),
  ...(operation.probe ? { probe: true } : {}),
});

function placeOf(reading: Reading, need: NeedLegend): PlannedPlace | null {
  const interval = reading.at(need.task);
  const option = need.options[reading.option(need.choice)];
  if (interval === null || option === undefined) return null;
  return { ...option.place, from: interval.start, until: interval.end };
}

/** A step's planned form: one entry, or one for each piece. */
export function plannedSteps(reading: Reading, legend: StepLegend): readonly PlannedStep[] {
  if (!reading.holds(legend.when)) return [];
  const { instance, dish } = legend;
  const alternative = legend.wayOptions[reading.option(legend.wayChoice)]!;
  const places = legend.needs
    .filter((need) => need.ways.includes(alternative))
    .flatMap((need) => placeOf(reading, need) ?? []);
  const common = {
    kind: dish.kind,
    component: instance.component.id,
    step: instance.step.id,
    // A way is named by what is other in it, such as `with fan`.
    name: alternative === 0 ? instance.step.name : `${instance.step.name}, ${instance.ways[alternative]!.name}`,
    batch: instance.batch,
    portions: instance.portions,
    alternative,
    inFinish: instance.inFinish,
  };
  if (legend.pieces.length > 0) {
    const present = legend.pieces.filter((piece) => reading.at(piece.task) !== null);
    return present.map((piece, index): PlannedStep => {
      const interval = reading.sure(piece.task);
      return {
        ...common,
        id: present.length === 1 ? instance.id : `${instance.id}~${index + 1}`,
        ...(present.length === 1 ? {} : { piece: index + 1 }),
        ...interval,
        segments: [segmentOf(reading, piece)],
        // Places are held through all pieces; they are told with the first.
        places: index === 0 ? places : [],
      };
    });
  }
  const shape = legend.shapes.find((each) => each.ways.includes(alternative))!;
  const point = (at: (typeof shape.boundaries)[number]): number => (at === 'origin' ? 0 : reading.sure(at.task)[at.at]);
  const segments = shape.parts.flatMap((part, index): PlannedSegment[] => {
    const operations = shape.operations[index]!.map((operation) => segmentOf(reading, operation));
    if (part.hands === 'on') return operations;
    const own = instance.ways[alternative]!.parts[index]!;
    return [
      {
        hands: 'off',
        ...(own.name === null ? {} : { name: own.name }),
        start: point(shape.boundaries[index]!),
        end: point(shape.boundaries[index + 1]!),
      },
      ...operations,
    ];
  });
  return [{ ...common, id: instance.id, start: point(legend.start), end: point(legend.end), segments, places }];
}
