/**
 * Drips: an uncovered tray shares its soil with the trays below it. Where that must not be, the two may be in the oven one after
 * the other, or the other way up, but never at the same time with the dripping one above.
 */
import type { Mode } from '../engine/problem.ts';
import { soilOf } from './soil.ts';
import type { NeedLegend, StepLegend, Translation } from './legend.ts';
import { end, start } from './problem-builder.ts';

interface RackUse {
  readonly step: StepLegend;
  readonly need: NeedLegend;
  readonly drips: boolean;
}

const rackUses = (t: Translation): readonly RackUse[] =>
  t.steps.flatMap((step) =>
    step.needs.flatMap((need) => (need.need.use === 'oven' ? [{ step, need, drips: need.need.drips === true }] : [])),
  );

/** Keeps what must not be dripped on from under what drips. After the steps. */
export function addDrips(t: Translation): void {
  const uses = rackUses(t);
  for (const above of uses.filter((use) => use.drips)) {
    const leaves = new Set(soilOf(t, above.step.instance).leaves);
    const below = uses.filter(
      (use) => use.step !== above.step && soilOf(t, use.step.instance).avoids.some((mark) => leaves.has(mark)),
    );
    if (below.length > 0) keepApart(t, above, below);
  }
}

/** For each rack, a state that the dripping use has while it is above and the others have while they are on it. */
function keepApart(t: Translation, above: RackUse, below: readonly RackUse[]): void {
  for (const oven of t.kitchen.ovens) {
    oven.racks.forEach((rack, level) => {
      const higher = new Set(oven.racks.slice(0, level).map((each) => each.id));
      const state = `drips:${above.need.task}/${oven.id}/${rack.id}`;
      const isAbove = (option: NeedLegend['options'][number]): boolean =>
        option.place.oven === oven.id && higher.has(option.place.id);
      const isHere = (option: NeedLegend['options'][number]): boolean =>
        option.place.oven === oven.id && option.place.id === rack.id;
      const others = below.filter((use) => use.need.options.some(isHere));
      if (others.length === 0 || !above.need.options.some(isAbove)) return;
      t.builder.states.push({
        id: state,
        classes: ['drips from above', 'must stay clear'],
        gap: [
          [null, 0],
          [0, null],
        ],
      });
      mirror(t, above, state, 0, isAbove);
      for (const use of others) mirror(t, use, state, 1, isHere);
    });
  }
}

/** A task beside a use of a rack, present while that use is where it matters, that has the state. */
function mirror(
  t: Translation,
  use: RackUse,
  state: string,
  number: number,
  matters: (option: NeedLegend['options'][number]) => boolean,
): void {
  const { builder } = t;
  const task = `${use.need.task}/${state}`;
  const mode: Mode = { shortest: 0, longest: builder.horizon, uses: [], state: { state, class: number } };
  const when = builder.tasks.find((each) => each.id === use.need.task)!.when ?? [];
  builder.task(
    task,
    use.need.options.map((option) => (matters(option) ? mode : null)),
    use.need.choice,
    when,
  );
  builder.exactly(start(use.need.task), start(task), 0);
  builder.exactly(end(use.need.task), end(task), 0);
}
