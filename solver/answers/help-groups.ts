/** In which order, and in which groups, helps are asked about: what bears on the binding chain first and alone, the rest together. */
import { bindingChain } from '../engine/explain/binding-chain.ts';
import { planOrder } from '../engine/explain/plan-order.ts';
import type { Solution } from '../engine/outcome.ts';
import type { Translated } from '../translate/legend.ts';
import type { Help, HelpKind } from './help.ts';
import { stepId } from './step-helps.ts';

/** Kinds that are asked about together, in this order; those of no list are asked about one by one, before. */
const TOGETHER: readonly (readonly HelpKind[])[] = [
  ['board', 'bowl', 'tool', 'tray', 'place'],
  ['pan', 'appliance'],
  ['by-itself'],
  ['by-hand'],
];

/**
 * Every help in one group.
 *
 * @param solution the best plan without help
 */
export function groupsOf(
  helps: readonly Help[],
  translated: Translated,
  solution: Solution,
): readonly (readonly Help[])[] {
  const chain = chainSteps(translated, solution);
  const grouped = new Set(TOGETHER.flat());
  const isStep = ({ kind }: Help): boolean => kind === 'by-hand' || kind === 'by-itself';
  const alone = helps.filter((help) => !grouped.has(help.kind));
  const onChain = helps
    .filter((help) => isStep(help) && chain.has(stepOf(help)))
    .sort((a, b) => chain.get(stepOf(a))! - chain.get(stepOf(b))!);
  const rest = helps.filter((help) => !alone.includes(help) && !onChain.includes(help));
  return [
    ...onChain.map((help) => [help]),
    ...alone.map((help) => [help]),
    ...TOGETHER.map((kinds) => rest.filter(({ kind }) => kinds.includes(kind))).filter((group) => group.length > 0),
  ];
}

const stepOf = ({ id }: Help): string => id.slice(id.indexOf(' ') + 1);

/** Steps of the binding chain, by their place in it. */
function chainSteps({ problem, translation }: Translated, solution: Solution): ReadonlyMap<string, number> {
  const chain = bindingChain(problem, planOrder(problem, solution));
  const places = new Map<string, number>();
  const nodes = (chain?.arcs ?? []).flatMap(({ from, to }) => [from, to]).filter((node) => node > 0);
  nodes.forEach((node, place) => {
    const task = problem.tasks[(node - 1) >> 1]!.id;
    for (const legend of translation.steps) {
      if (task !== legend.key && !/^[:~#]/.test(task.slice(legend.key.length))) continue;
      if (!task.startsWith(legend.key)) continue;
      if (!places.has(stepId(legend))) places.set(stepId(legend), place);
    }
  });
  return places;
}
