/** The binding chain in words: a line a link, with its time and why it is not sooner. */
import type { Plan } from '../../../solver/kitchen/plan.ts';
import { componentOwners, ownerOf, waterOwner, type Owner } from './identity.ts';
import { clockAt, clockSpan, minutesWords } from './wall-clock.ts';

export interface ChainLine {
  /** Null for what is no step. */
  readonly stepId: string | null;
  readonly owner: Owner | null;
  readonly clock: string;
  readonly length: string;
  readonly name: string;
  readonly because: string;
}

/** @returns first to last; empty for a plan that carries no chain */
export function chainLines(plan: Plan): readonly ChainLine[] {
  const owners = componentOwners(plan);
  return (plan.bindingChain ?? []).map((link) => {
    const step = plan.steps.find((each) => each.id === link.step);
    const pool = plan.pools.some((course) => course.pool === link.thing);
    const oven: Owner = { kind: 'work', id: link.thing ?? '', name: 'heating', glyph: 'preheat' };
    const work = pool ? waterOwner(link.thing!) : link.thing === undefined ? null : oven;
    return {
      stepId: step?.id ?? null,
      owner: step === undefined ? work : ownerOf(step, owners),
      clock: link.from === link.until ? clockAt(plan.start, link.from) : clockSpan(plan.start, link.from, link.until),
      length: link.from === link.until ? '' : minutesWords(link.until - link.from),
      name: link.name,
      because: link.because,
    };
  });
}

/** What the chain decides, as the sentence above it. */
export function chainTitle(plan: Plan): string {
  const first = plan.bindingChain?.[0];
  const together =
    plan.tiers.some((tier) => tier.id === 'latest-start') && first !== undefined
      ? `work begins at ${clockAt(plan.start, first.from)}`
      : `the finish is at ${clockAt(plan.start, plan.finishMinutes)}`;
  return `Each waits for the one before it without a minute to spare: because of these, ${together}.`;
}
