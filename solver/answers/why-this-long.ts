/**
 * Why this long: the binding chain of a plan in a cook's words, and how much later each step may start.
 *
 * The chain is read from the order inside the solution (`engine/explain`). Points of one step make one link; what is no step and
 * takes time (a pool that comes to the boil, an oven that turns) makes a link of its own; what takes none is passed over.
 */
import { bindingChain, type ArcCost } from '../engine/explain/binding-chain.ts';
import { planOrder, type OrderArc, type PlanOrder } from '../engine/explain/plan-order.ts';
import { roomWithin } from '../engine/explain/room.ts';
import { ORIGIN, startNode } from '../engine/explain/taken.ts';
import type { Solution } from '../engine/outcome.ts';
import type { Point } from '../engine/problem.ts';
import type { ChainLink } from '../kitchen/chain.ts';
import type { Plan } from '../kitchen/plan.ts';
import type { Translated } from '../translate/legend.ts';
import { arcWords, stepWords, type Words } from './arc-words.ts';
import { ownersOf, sameOwner, type Owner } from './task-owners.ts';

export interface WhyThisLong {
  /** First to last; empty where the plan has no finish and no table time. */
  readonly chain: readonly ChainLink[];
  /** Minutes by which each planned step may start later, by its id. */
  readonly slack: ReadonlyMap<string, number>;
}

/**
 * Why the plan takes as long as it does.
 *
 * @param solution a solution of the translated problem
 * @param plan the same solution read back
 * @param order of the solution, where it is known already
 */
export function whyThisLong(
  translated: Translated,
  solution: Solution,
  plan: Plan,
  order: PlanOrder = planOrder(translated.problem, solution),
): WhyThisLong {
  const ownerOf = ownersOf(translated, plan);
  const { tasks } = translated.problem;
  const owners = Array.from({ length: order.nodes }, (_, node): Owner | null => {
    if (node === ORIGIN || order.times[node]! < 0) return null;
    const task = tasks[(node - 1) >> 1]!.id;
    return ownerOf({ task, at: node % 2 === 1 ? 'start' : 'end' } satisfies Point);
  });
  return { chain: chainOf(translated, order, owners), slack: slackOf(translated, order, owners) };
}

/** The plan with its binding chain and the slack of its steps. */
export function withReasons(plan: Plan, { chain, slack }: WhyThisLong): Plan {
  return {
    ...plan,
    steps: plan.steps.map((step) => {
      const minutes = slack.get(step.id);
      return minutes === undefined ? step : { ...step, slack: minutes };
    }),
    bindingChain: [...chain],
  };
}

/** What it costs to tell an arc: least within one step, more from one to the next, most where the telling would go back in time. */
const telling =
  (owners: readonly (Owner | null)[]): ArcCost =>
  ({ from, to, least }) => {
    const [before, after] = [owners[from]!, owners[to]!];
    if (sameOwner(before, after)) return 1;
    return (after?.kind === 'thing' ? 12 : 10) + (least < 0 && to !== ORIGIN ? 30 : 0);
  };

/** A link while it grows. */
interface Growing {
  readonly owner: Owner;
  from: number;
  until: number;
  words: Words;
}

function chainOf(translated: Translated, order: PlanOrder, owners: readonly (Owner | null)[]): readonly ChainLink[] {
  const chain = bindingChain(translated.problem, order, telling(owners));
  if (chain === null || chain.arcs.length === 0) return [];
  const { arcs, times } = chain;
  const links: ChainLink[] = [];
  let carried: Words | null = null;
  let link: Growing | null = null;
  const close = (): void => {
    if (link === null) return;
    if (link.from < link.until || (link.owner.kind === 'step' && link.owner.step.start === link.owner.step.end)) {
      links.push(told(translated, link));
      carried = null;
    } else carried = moreTelling(carried, link.words);
    link = null;
  };
  const enter = (node: number, words: Words): void => {
    const owner = owners[node];
    if (owner === null || owner === undefined) return;
    link = { owner, from: times[node]!, until: times[node]!, words: moreTelling(carried, words) };
  };
  const first = arcs[0]!.from;
  enter(first, { why: 'start', because: 'is the first work' });
  for (const arc of arcs) {
    const before = owners[arc.from] ?? null;
    const after = owners[arc.to] ?? null;
    const reached = times[arc.to]!;
    // A closure cannot tell that `link` was set by `enter`.
    const open = link as Growing | null;
    if (open !== null && arc.to !== ORIGIN && sameOwner(before, after)) {
      open.from = Math.min(open.from, reached);
      open.until = Math.max(open.until, reached);
      continue;
    }
    const words = arcWords(translated, arc, before, after);
    if (open !== null && arc.least > 0) open.until = Math.max(open.until, goesOnUntil(open, reached));
    const idleFrom = open?.until ?? times[arc.from]!;
    close();
    if (words.meanwhile !== undefined && idleFrom < reached)
      links.push({
        ...words.meanwhile,
        from: idleFrom,
        until: reached,
        why: words.why,
        because: 'for what goes in next',
      });
    if (arc.to === ORIGIN) links.push(deadline(arc, times, words));
    else enter(arc.to, words);
  }
  close();
  return links;
}

/** A step that is still at work fills the time up to the next link; so does what goes on and is no step. */
const goesOnUntil = (link: Growing, reached: number): number =>
  link.owner.kind === 'thing' ? reached : Math.min(reached, Math.max(link.until, link.owner.step.end));

function told(translated: Translated, { owner, from, until, words: { why, because } }: Growing): ChainLink {
  if (owner.kind === 'thing')
    return { ...(owner.of === undefined ? {} : { thing: owner.of }), name: owner.doing, from, until, why, because };
  // Where one named part of the step binds and no other, it is the part that is told.
  const part = owner.step.segments.find((segment) => segment.start === from && segment.end === until)?.name;
  const whole = stepWords(translated, owner.step);
  const name = part === undefined || owner.step.segments.length === 1 ? whole : `${whole}: ${part}`;
  return { step: owner.step.id, name, from, until, why, because };
}

const deadline = (arc: OrderArc, times: Int32Array, { why, because }: Words): ChainLink => ({
  name: because.endsWith('is pinned to this time') ? 'The pin' : why === 'table' ? 'The table' : 'The end',
  from: times[arc.from]!,
  until: times[arc.from]!,
  why,
  because,
});

/** Of a reason carried past what takes no time and the reason after it, the one that says more. */
function moreTelling(carried: Words | null, words: Words): Words {
  if (carried === null) return words;
  const plain = words.why === 'order' || words.why === 'start';
  return plain ? carried : words;
}

function slackOf(
  { problem }: Translated,
  order: PlanOrder,
  owners: readonly (Owner | null)[],
): ReadonlyMap<string, number> {
  const { latest } = roomWithin(problem, order);
  const slack = new Map<string, number>();
  problem.tasks.forEach((_, task) => {
    const node = startNode(task);
    const owner = owners[node];
    if (owner?.kind !== 'step' || order.times[node] !== owner.step.start) return;
    const minutes = latest[node]! - order.times[node];
    slack.set(owner.step.id, Math.min(minutes, slack.get(owner.step.id) ?? Infinity));
  });
  return slack;
}
