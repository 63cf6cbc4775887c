/** Work that was told to have begun or to be over while what it waits for is not: that has to be told first. */
import { OPEN } from '../../engine/replan/asked.ts';
import { endNode, startNode } from '../../engine/explain/taken.ts';
import { wholeId } from '../../kitchen/plan.ts';
import type { StepLegend, Translated } from '../../translate/legend.ts';
import { legendsOf, related } from '../../translate/orders.ts';
import type { LiveEvent } from './events.ts';

/** A step told of, and ids of the steps that it waits for, by their components, and that are not over by what is known. */
export interface ToldAhead {
  readonly step: string;
  readonly waitsFor: readonly string[];
}

/**
 * @param translated the plan's problem, and what its tasks stand for
 * @param planned minutes by node as planned; −1 for absent tasks
 * @param facts minutes by node of what has happened, or `OPEN`
 * @returns one for each step of a dish that was told ahead of others, these in the order in which they are planned
 */
export function toldAhead(
  translated: Translated,
  planned: Int32Array,
  facts: Int32Array,
  events: readonly LiveEvent[],
): readonly ToldAhead[] {
  const { problem, translation } = translated;
  const position = new Map(problem.tasks.map((task, index) => [task.id, index]));
  const nodeOf = (point: StepLegend['start']): number =>
    point.at === 'start' ? startNode(position.get(point.task)!) : endNode(position.get(point.task)!);
  const isPlanned = ({ start }: StepLegend): boolean => planned[nodeOf(start)]! >= 0;
  const before = (after: StepLegend): readonly StepLegend[] =>
    after.instance.after
      .flatMap((order) => legendsOf(translation, order.component, order.step))
      .filter((legend) => isPlanned(legend) && related(legend, after));
  const told = new Set(
    events.flatMap(({ kind, step }) => (kind === 'started' || kind === 'done' ? [wholeId({ id: step })] : [])),
  );
  return [...told].flatMap((step): ToldAhead[] => {
    const open = new Set<StepLegend>();
    const queue = translation.steps.filter((legend) => legend.instance.id === step && isPlanned(legend));
    for (let after = queue.pop(); after !== undefined; after = queue.pop())
      for (const legend of before(after)) {
        if (open.has(legend) || facts[nodeOf(legend.end)] !== OPEN) continue;
        open.add(legend);
        queue.push(legend);
      }
    const inOrder = [...open].sort((a, b) => planned[nodeOf(a.start)]! - planned[nodeOf(b.start)]!);
    const waitsFor = [...new Set(inOrder.map(({ instance }) => instance.id))].filter((id) => !told.has(id));
    return waitsFor.length === 0 ? [] : [{ step, waitsFor }];
  });
}
