/**
 * A plan read against its own frozen documents: which planned step is which step of which batch, which place serves which need.
 * Everything that a rule asks comes from here or from the plan itself; nothing is taken over from whoever made the plan.
 */
import type { Component } from '../kitchen/component.ts';
import {
  dishesOf,
  expandDish,
  expandHolds,
  type Dish,
  type HoldInstance,
  type StepInstance,
  type Way,
} from '../kitchen/expand.ts';
import type { InputFault } from '../kitchen/fault.ts';
import { asLived } from '../kitchen/lived.ts';
import {
  wholeId,
  type Plan,
  type PlannedHold,
  type PlannedPlace,
  type PlannedSegment,
  type PlannedStep,
} from '../kitchen/plan.ts';
import type { SafetyRules } from '../kitchen/safety-rules.ts';
import type { Need } from '../kitchen/step.ts';
import { STRICTEST_BUILT_IN } from '../safety/rules-in-force.ts';
import { clockOf, type Clock, type WallOffset } from './clock.ts';
import { meetNeeds, type Whole } from './meet-needs.ts';

export interface Span {
  readonly start: number;
  readonly end: number;
}

/** A place with the need that it serves. */
export interface Use {
  readonly need: Need;
  readonly place: PlannedPlace;
  readonly component: Component;
  readonly batch: number;
  readonly batched: boolean;
  /** The planned step that has it; null: a hold across steps. */
  readonly step: PieceReading | null;
  readonly hold: HoldReading | null;
}

/** A step done in one go, or one piece of it. */
export interface PieceReading {
  readonly planned: PlannedStep;
  readonly instance: StepInstance;
  /** null: the plan names a way that the step does not have. */
  readonly way: Way | null;
  /** Planned segments without the checks on the way, in order of time. */
  readonly main: readonly PlannedSegment[];
  /** One a part of the way; null: the segments are not those of the way. */
  readonly spans: readonly Span[] | null;
  readonly uses: readonly Use[];
}

export interface StepReading {
  readonly instance: StepInstance;
  readonly dish: Dish;
  /** In order of time; empty: not there. */
  readonly pieces: readonly PieceReading[];
  /** What has the step's places: each time that it is planned, or all its pieces together. */
  readonly wholes: readonly (Whole & { readonly piece: PieceReading })[];
  readonly start: number;
  readonly end: number;
}

export interface HoldReading {
  readonly instance: HoldInstance;
  readonly planned: PlannedHold | null;
  /** From the start of its first step to the end of its last; null: one of them is not there. */
  readonly span: Span | null;
  readonly use: Use | null;
}

export interface Reading {
  readonly plan: Plan;
  readonly clock: Clock;
  /** The safety rules that the plan carries; older plans are held to the strictest of the built-in ones. */
  readonly rules: SafetyRules;
  readonly faults: readonly InputFault[];
  readonly dishes: readonly Dish[];
  /** Portions of each batch that the plan shows, by component. */
  readonly splits: ReadonlyMap<string, readonly number[]>;
  readonly steps: readonly StepReading[];
  readonly holds: readonly HoldReading[];
  /** Everything that serves a need. */
  readonly uses: readonly Use[];
  /** Planned steps that no step of the session asks for, washes, water and preheating apart. */
  readonly strangers: readonly PlannedStep[];
  readonly washes: readonly PlannedStep[];
  readonly water: readonly PlannedStep[];
  readonly preheats: readonly PlannedStep[];
}

/** What a cook would call a planned step. */
export function called(planned: PlannedStep): string {
  const batch = planned.id.match(/\.(\d)(~\d+)?$/)?.[1];
  const of = planned.kind === 'step' ? ` (${planned.component}${batch === undefined ? '' : `, batch ${batch}`})` : '';
  return `“${planned.name}”${of}`;
}

/** Portions of each batch as the plan shows them. */
function shownSplit(plan: Plan, dish: Dish): readonly number[] {
  const batchedIds = new Set(dish.component.batches?.steps ?? []);
  const shown: number[] = [];
  for (const planned of plan.steps) {
    if (planned.component !== dish.component.id || !batchedIds.has(planned.step)) continue;
    if (shown[planned.batch - 1] === undefined && planned.portions !== undefined)
      shown[planned.batch - 1] = planned.portions;
  }
  const sizes = Array.from(shown, (size) => size ?? 0);
  const same = (split: readonly number[]): boolean =>
    split.length === sizes.length && split.every((size, index) => size === sizes[index]);
  return (
    dish.splits.find(same) ?? dish.splits.find((split) => split.length === sizes.length) ?? dish.splits[0] ?? sizes
  );
}

function spansOf(way: Way, main: readonly PlannedSegment[]): readonly Span[] | null {
  if (way.parts.length !== main.length) return null;
  if (way.parts.some((part, index) => part.hands !== main[index]!.hands)) return null;
  return main.map(({ start, end }) => ({ start, end }));
}

function readPiece(planned: PlannedStep, instance: StepInstance): PieceReading & { readonly uses: Use[] } {
  const way = instance.ways[planned.alternative] ?? null;
  const main = planned.segments
    .filter((segment) => segment.check !== true)
    .sort((a, b) => a.start - b.start || a.end - b.end);
  return { planned, instance, way, main, spans: way === null ? null : spansOf(way, main), uses: [] };
}

function readStep(plan: Plan, found: readonly PlannedStep[], instance: StepInstance, dish: Dish): StepReading {
  const pieces = found
    .map((planned) => readPiece(planned, instance))
    .sort((a, b) => a.planned.start - b.planned.start || a.planned.end - b.planned.end);
  const start = Math.min(...pieces.map(({ planned }) => planned.start));
  const end = Math.max(...pieces.map(({ planned }) => planned.end));
  const [first] = pieces;
  const inPieces = first !== undefined && pieces.some(({ planned }) => planned.piece !== undefined);
  const wholes = inPieces
    ? [{ piece: first, start, end, spans: null, places: pieces.flatMap(({ planned }) => planned.places) }]
    : pieces.map((piece) => {
        const { start: from, end: until, places } = piece.planned;
        return { piece, start: from, end: until, spans: piece.spans, places };
      });
  for (const whole of wholes) {
    if (whole.piece.way === null) continue;
    for (const { need, place } of meetNeeds(plan, whole, whole.piece.way).met) {
      const { component, batch, batched } = instance;
      whole.piece.uses.push({ need, place, component, batch, batched, step: whole.piece, hold: null });
    }
  }
  return { instance, dish, pieces, wholes, start, end };
}

function readHold(instance: HoldInstance, plan: Plan, steps: readonly StepReading[]): HoldReading {
  const { component, hold, batch, batched } = instance;
  const planned =
    plan.holds.find((each) => each.component === component.id && each.hold === hold.id && each.batch === batch) ?? null;
  const of = (id: string): readonly StepReading[] =>
    steps.filter(
      ({ instance: other, pieces }) =>
        other.component.id === component.id &&
        other.step.id === id &&
        pieces.length > 0 &&
        !(batched && other.batched && other.batch !== batch),
    );
  const [from, to] = [of(hold.from), of(hold.to)];
  const span =
    from.length === 0 || to.length === 0
      ? null
      : { start: Math.min(...from.map((step) => step.start)), end: Math.max(...to.map((step) => step.end)) };
  const reading = { instance, planned, span, use: null as Use | null };
  if (planned !== null) {
    reading.use = {
      need: instance.need,
      place: planned.place,
      component,
      batch,
      batched,
      step: null,
      hold: reading,
    };
  }
  return reading;
}

/** Reads a plan against its session, kitchen and components. */
export function readPlan(plan: Plan, wallOffset?: WallOffset): Reading {
  const { dishes, faults } = dishesOf(plan.session, plan.components);
  const splits = new Map(dishes.map((dish) => [dish.component.id, shownSplit(plan, dish)]));
  const byId = new Map<string, PlannedStep[]>();
  for (const planned of plan.steps) {
    const id = wholeId(planned);
    byId.set(id, [...(byId.get(id) ?? []), planned]);
  }
  const claimed = new Set<PlannedStep>();
  const steps = dishes.flatMap((dish) =>
    expandDish(dish, splits.get(dish.component.id)!).map((written): StepReading => {
      const instance = asLived(written, plan.lived);
      const found = (byId.get(instance.id) ?? []).filter((planned) => planned.kind === dish.kind);
      for (const planned of found) claimed.add(planned);
      return readStep(plan, found, instance, dish);
    }),
  );
  const holds = dishes.flatMap((dish) =>
    expandHolds(dish, splits.get(dish.component.id)!).map((instance) => readHold(instance, plan, steps)),
  );
  const of = (kind: PlannedStep['kind']): readonly PlannedStep[] => plan.steps.filter((each) => each.kind === kind);
  return {
    plan,
    clock: clockOf(plan, wallOffset),
    rules: plan.rules ?? STRICTEST_BUILT_IN,
    faults,
    dishes,
    splits,
    steps,
    holds,
    uses: [
      ...steps.flatMap(({ pieces }) => pieces.flatMap(({ uses }) => uses)),
      ...holds.flatMap(({ use }) => (use === null ? [] : [use])),
    ],
    strangers: plan.steps.filter((each) => ['step', 'packing', 'clearing'].includes(each.kind) && !claimed.has(each)),
    washes: of('wash'),
    water: of('water'),
    preheats: of('preheat'),
  };
}

/** Planned steps that have a use, for pointing at: its step, or the ends of its hold. */
export function stepsOfUse(use: Use, reading: Reading): readonly string[] {
  if (use.step !== null) return [use.step.planned.id];
  const hold = use.hold!.instance;
  return reading.steps
    .filter(
      ({ instance }) =>
        instance.component.id === hold.component.id &&
        (instance.step.id === hold.hold.from || instance.step.id === hold.hold.to) &&
        !(hold.batched && instance.batched && instance.batch !== hold.batch),
    )
    .flatMap(({ pieces }) => pieces.map(({ planned }) => planned.id));
}

/** What a cook would call a use. */
export function calledUse(use: Use): string {
  return use.step !== null ? called(use.step.planned) : `${use.component.name} (${use.hold!.instance.hold.id})`;
}
