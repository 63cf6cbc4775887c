/** What ties steps together: order within and across components, water drawn, heat left over, things washed for reuse, boxes. */
import type { Plan, PlannedStep } from '../../../solver/kitchen/plan.ts';
import { durationMinutes } from '../../../solver/kitchen/values.ts';
import { poolName, thingName, volumeWords } from './kitchen-names.ts';
import { stepDocument } from './step-words.ts';
import { minutesWords } from './wall-clock.ts';

export type RelationKind = 'order' | 'water' | 'heat' | 'wash' | 'boxes';

export interface Relation {
  readonly kind: RelationKind;
  /** Step ids. */
  readonly from: string;
  readonly to: string;
  /** Why: `at once`, `at least 10 min after`, `450 mL of its water`. */
  readonly words: string;
}

const sameBatch = (a: PlannedStep, b: PlannedStep): boolean => a.batch === b.batch;

/** Planned steps of a component's step: of the same batch where that exists, else all. */
function named(plan: Plan, component: string, step: string, like: PlannedStep): readonly PlannedStep[] {
  const all = plan.steps.filter((each) => each.kind === 'step' && each.component === component && each.step === step);
  const batch = all.filter((each) => each.component === like.component && sameBatch(each, like));
  const found = batch.length > 0 ? batch : all;
  const last = Math.max(0, ...found.map((each) => each.piece ?? 0));
  return found.filter((each) => (each.piece ?? last) === last);
}

function gapWords(shortest: string | undefined, longest: string | undefined): string {
  const least = shortest === undefined ? 0 : durationMinutes(shortest);
  const most = longest === undefined ? null : durationMinutes(longest);
  if (most === 0) return 'at once';
  const parts = [
    ...(least > 0 ? [`at least ${minutesWords(least)} later`] : []),
    ...(most === null ? [] : [`at most ${minutesWords(most)} later`]),
  ];
  return parts.join(', ');
}

function orderRelations(plan: Plan): readonly Relation[] {
  return plan.steps
    .filter((step) => (step.piece ?? 1) === 1)
    .flatMap((step) =>
      (stepDocument(plan, step)?.after ?? []).flatMap((after): Relation[] => {
        const [component, id] = after.step.includes('/') ? after.step.split('/') : [step.component, after.step];
        return named(plan, component!, id!, step).map((earlier) => ({
          kind: 'order',
          from: earlier.id,
          to: step.id,
          words: gapWords(after.shortest, after.longest),
        }));
      }),
    );
}

function waterRelations(plan: Plan): readonly Relation[] {
  return plan.steps.flatMap((step) =>
    step.places.flatMap((place): Relation[] => {
      if (place.kind !== 'pool') return [];
      const filled = plan.steps
        .filter((each) => each.kind === 'water' && each.component === place.id && each.step !== 'empty')
        .filter((each) => each.end <= place.from)
        .sort((a, b) => b.end - a.end)[0];
      if (filled === undefined) return [];
      const name = poolName(plan, place.id);
      const words = place.how === 'draw' ? `${volumeWords(place.amount)} ladled out of ${name}` : `hot water: ${name}`;
      return [{ kind: 'water', from: filled.id, to: step.id, words }];
    }),
  );
}

function heatRelations(plan: Plan): readonly Relation[] {
  const racks = plan.steps.flatMap((step) =>
    step.places.filter((place) => place.kind === 'rack').map((place) => ({ step, place })),
  );
  return racks
    .filter(({ place }) => place.afterheat === true)
    .flatMap(({ step, place }): Relation[] => {
      const before = racks
        .filter((other) => other.place.oven === place.oven && other.place.afterheat !== true)
        .filter((other) => other.place.until <= place.from)
        .sort((a, b) => b.place.until - a.place.until)[0];
      return before === undefined
        ? []
        : [{ kind: 'heat', from: before.step.id, to: step.id, words: 'heat left in the oven' }];
    });
}

/** A wash stands between the last use of the thing before it and the next after it. */
function washRelations(plan: Plan): readonly Relation[] {
  const uses = [...plan.steps.flatMap((step) => step.places.map((place) => ({ step, place })))].filter(({ place }) =>
    ['board', 'pan', 'tray', 'bowl', 'tool'].includes(place.kind),
  );
  return plan.steps
    .filter((step) => step.kind === 'wash')
    .flatMap((wash): Relation[] => {
      const own = uses.filter(({ step, place }) => step.kind !== 'wash' && place.id === wash.component);
      const kind = wash.places.find((place) => place.id === wash.component)?.kind;
      const name = kind === undefined ? 'hands' : thingName(plan, kind, wash.component);
      const before = own
        .filter(({ place }) => place.until <= wash.start)
        .sort((a, b) => b.place.until - a.place.until)[0];
      const after = own.filter(({ place }) => place.from >= wash.end).sort((a, b) => a.place.from - b.place.from)[0];
      return [
        ...(before === undefined
          ? []
          : [{ kind: 'wash' as const, from: before.step.id, to: wash.id, words: `${name} used` }]),
        ...(after === undefined
          ? []
          : [{ kind: 'wash' as const, from: wash.id, to: after.step.id, words: `${name} clean` }]),
      ];
    });
}

function boxRelations(plan: Plan): readonly Relation[] {
  const { packing } = plan.session;
  if (packing === undefined) return [];
  const first = (step: string): PlannedStep | undefined =>
    plan.steps.find((each) => each.kind === 'packing' && each.step === step);
  const pack = first('pack');
  const chain = [pack, first('cool'), first('put-away')].filter((step) => step !== undefined);
  const links = chain.slice(1).map((step, index): Relation => {
    return { kind: 'boxes', from: chain[index]!.id, to: step.id, words: 'the boxes' };
  });
  if (pack === undefined) return links;
  const ready = plan.components
    .filter((component) => packing.without?.includes(component.id) !== true)
    .flatMap((component): Relation[] => {
      const steps = plan.steps.filter((step) => step.kind === 'step' && step.component === component.id);
      const named = component.ready === undefined ? steps : steps.filter((step) => step.step === component.ready);
      const last = [...named].filter((step) => step.end <= pack.start).sort((a, b) => b.end - a.end)[0];
      return last === undefined ? [] : [{ kind: 'boxes', from: last.id, to: pack.id, words: 'goes into the boxes' }];
    });
  return [...ready, ...links];
}

/** Every tie between two steps of a plan, each once. */
export function relationsOf(plan: Plan): readonly Relation[] {
  const all = [
    ...orderRelations(plan),
    ...waterRelations(plan),
    ...heatRelations(plan),
    ...washRelations(plan),
    ...boxRelations(plan),
  ];
  const seen = new Set<string>();
  return all.filter((relation) => {
    const key = `${relation.kind} ${relation.from} ${relation.to}`;
    if (seen.has(key) || relation.from === relation.to) return false;
    seen.add(key);
    return true;
  });
}
