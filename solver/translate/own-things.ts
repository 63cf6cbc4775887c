/**
 * Each its own: where every use of bowls, trays, boards or tools can have a thing to itself, it gets one for good. Nothing is
 * lost by it, for a thing of one's own is always free and clean; and there is nothing left to choose, to wait for or to wash.
 */
import type { Literal } from '../engine/problem.ts';
import type { HoldLegend, NeedLegend, PlaceOption, Translation } from './legend.ts';
import { resourcesOfThing } from './places.ts';

const KINDS = ['bowl', 'tray', 'board', 'tool'] as const;

interface ThingUse {
  readonly task: string;
  readonly choice: string | null;
  readonly options: readonly PlaceOption[];
}

/** Gives every use of a kind its own thing where there are enough. After steps and holds, before pins. */
export function giveEachItsOwn(t: Translation): void {
  for (const kind of KINDS) {
    const uses = [...t.steps.flatMap((step) => step.needs), ...t.holds].filter(
      (use) => use.options[0]?.place.kind === kind,
    );
    if (uses.length === 0 || uses.some((use) => use.choice === null && use.options.length > 1) || spokenFor(t, kind))
      continue;
    const own = matching(uses);
    if (own !== null) own.forEach((option, index) => fix(t, uses[index]!, option));
  }
}

/** A pin or an absence names a thing of this kind. */
function spokenFor(t: Translation, kind: string): boolean {
  const named = [
    ...(t.session.pins ?? []).flatMap((pin) => pin.place ?? []),
    ...(t.session.absences ?? []).map((absence) => absence.what),
  ];
  return named.some((id) => resourcesOfThing(t.kitchen, id).some((resource) => resource.startsWith(`${kind}:`)));
}

/** A different thing for each use (Kuhn's augmenting paths), as the index of its option; null where there are not enough. */
function matching(uses: readonly ThingUse[]): readonly number[] | null {
  const takenBy = new Map<string, number>();
  const find = (use: number, tried: Set<string>): boolean =>
    uses[use]!.options.some(({ resource }) => {
      if (tried.has(resource)) return false;
      tried.add(resource);
      const holder = takenBy.get(resource);
      if (holder !== undefined && !find(holder, tried)) return false;
      takenBy.set(resource, use);
      return true;
    });
  if (!uses.every((_, index) => find(index, new Set()))) return null;
  return uses.map((use, index) => use.options.findIndex(({ resource }) => takenBy.get(resource) === index));
}

/** Leaves a use one option: in the problem and in the legend. */
function fix(t: Translation, use: ThingUse, option: number): void {
  const { builder } = t;
  if (use.choice === null) return;
  const index = builder.tasks.findIndex((task) => task.id === use.task);
  const { choice: _, ...task } = builder.tasks[index]!;
  builder.tasks[index] = { ...task, modes: [task.modes[option]!] };
  builder.choices.splice(
    builder.choices.findIndex((choice) => choice.id === use.choice),
    1,
  );
  assertUnused(builder.forbidden.flat(), use.choice);
  const fixed = { choice: null, options: [use.options[option]!] };
  for (const step of t.steps) replace(step.needs, use, fixed);
  replace(t.holds, use, fixed);
}

function replace<T extends NeedLegend | HoldLegend>(
  list: T[],
  use: ThingUse,
  fixed: Pick<ThingUse, 'choice' | 'options'>,
): void {
  const index = list.indexOf(use as T);
  if (index >= 0) list[index] = { ...list[index]!, ...fixed };
}

function assertUnused(literals: readonly Literal[], choice: string): void {
  if (literals.some((literal) => literal.choice === choice)) throw new Error(`choice ${choice} is bound elsewhere`);
}
