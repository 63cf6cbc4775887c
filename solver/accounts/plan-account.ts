/**
 * The account of a plan: energy, water, money and carbon by source, by component and by box, against each component cooked alone,
 * with what sharing saved line by line. The lines sum to the saving, the sources and the components to the total.
 */
import { readPlan } from '../checker/reading.ts';
import type { Plan } from '../kitchen/plan.ts';
import type { Working } from '../working.ts';
import { minus, NOTHING, priced, sum, times, type Amount, type Priced } from './amounts.ts';
import type { AloneEntry, SourceEntry, SourceKind } from './entry.ts';
import { ovenEntries } from './ovens.ts';
import { ownEntries } from './own-heat.ts';
import { poolFigures, type PoolFigure } from './pool-figures.ts';
import { poolEntries } from './pools.ts';
import { sanityLines, type SanityLine } from './sanity.ts';

export interface SourceAccount {
  readonly kind: SourceKind;
  readonly id: string;
  readonly name: string;
  readonly used: Priced;
  readonly workings: readonly Working[];
}

export interface ComponentAccount {
  readonly id: string;
  readonly name: string;
  /** What it bears of the plan. */
  readonly shared: Priced;
  /** What it would take cooked by itself in this kitchen. */
  readonly alone: Priced;
}

export interface SavedLine {
  readonly by: 'kept-hot' | 'afterheat' | 'one-boil';
  /** Id of the oven or pool. */
  readonly source: string;
  /** The saving in words. */
  readonly text: string;
  readonly alone: Priced;
  readonly shared: Priced;
  /** Negative: sharing cost more than each alone. */
  readonly saved: Priced;
}

export interface PlanAccount {
  readonly currency: string;
  readonly total: Priced;
  readonly alone: Priced;
  readonly saved: Priced;
  readonly sources: readonly SourceAccount[];
  readonly components: readonly ComponentAccount[];
  readonly lines: readonly SavedLine[];
  /** Each box bears alike of what goes into boxes; null: the session packs none. */
  readonly box: { readonly boxes: number; readonly each: Priced } | null;
  /** Food and steam in the plan's pools. */
  readonly pools: readonly PoolFigure[];
  readonly sanity: readonly SanityLine[];
  /** What is in no figure. */
  readonly notCounted: readonly string[];
}

const NOT_COUNTED = [
  'water for washing, rinsing and cleaning, and water that is an ingredient',
  'lights, fridge and freezer, and the price of the food',
  'doors opened and food that takes up heat in the oven',
] as const;

/**
 * The account of a plan, from its own frozen documents.
 *
 * @param plan a plan that keeps the rules; of what it lacks nothing is reckoned
 * @see `ovens.ts`, `pools.ts` and `own-heat.ts` for how shared heat is borne, and what alone means
 */
export function accountOf(plan: Plan): PlanAccount {
  const reading = readPlan(plan);
  const { tariff } = plan.kitchen;
  const price = (amount: Amount): Priced => priced(amount, tariff);
  const entries = [...ovenEntries(reading), ...poolEntries(reading), ...ownEntries(reading)];
  const total = sum(entries.map(({ amount }) => amount));
  const alone = sum(entries.flatMap((entry) => entry.alone.map(({ amount }) => amount)));
  const components = reading.dishes
    .filter(({ kind }) => kind === 'step')
    .map(({ component: { id, name } }) => ({
      id,
      name,
      shared: sum(entries.map(({ borne }) => borne.get(id) ?? NOTHING)),
      alone: sum(
        entries.flatMap((entry) => entry.alone.filter((each) => each.component === id).map((each) => each.amount)),
      ),
    }));
  return {
    currency: tariff.currency,
    total: price(total),
    alone: price(alone),
    saved: price(minus(alone, total)),
    sources: entries.map(({ kind, id, name, amount, workings }) => ({ kind, id, name, used: price(amount), workings })),
    components: components.map((each) => ({ ...each, shared: price(each.shared), alone: price(each.alone) })),
    lines: entries.flatMap((entry) => linesOf(entry, plan)),
    box: boxOf(plan, components, price),
    pools: poolFigures(reading),
    sanity: sanityLines(plan),
    notCounted: [
      ...NOT_COUNTED,
      ...(price(total).carbonG === null || price(alone).carbonG === null
        ? ['carbon, as the tariff lacks a factor for gas or electricity']
        : []),
    ],
  };
}

const nameIn = (plan: Plan, id: string): string => plan.components.find((each) => each.id === id)?.name ?? id;

/** Lines of one source: afterheat is compared with nothing, the rest with all that the source took. */
function linesOf({ kind, id, name, amount, alone }: SourceEntry, plan: Plan): readonly SavedLine[] {
  const line = (by: SavedLine['by'], of: readonly AloneEntry[], shared: Amount): readonly SavedLine[] => {
    if (of.length === 0) return [];
    const apart = sum(of.map((each) => each.amount));
    const names = of.map(({ component }) => nameIn(plan, component)).join(', ');
    const cost = (each: Amount): Priced => priced(each, plan.kitchen.tariff);
    return [
      {
        by,
        source: id,
        text: SAID[by](name, of.length, names),
        alone: cost(apart),
        shared: cost(shared),
        saved: cost(minus(apart, shared)),
      },
    ];
  };
  const by = (which: AloneEntry['by']): readonly AloneEntry[] => alone.filter((each) => each.by === which);
  switch (kind) {
    case 'oven':
      return [...line('kept-hot', by('kept-hot'), amount), ...line('afterheat', by('afterheat'), NOTHING)];
    case 'pool':
      return line('one-boil', by('one-boil'), amount);
    case 'burner':
    case 'kettle':
    case 'appliance':
      return [];
  }
}

const SAID: Readonly<Record<SavedLine['by'], (source: string, count: number, names: string) => string>> = {
  'kept-hot': (source, count, names) =>
    `${source} is heated once and kept hot for ${names}, instead of ${count} times from cold`,
  afterheat: (source, _, names) => `${source} is still hot for ${names}, instead of heated for it`,
  'one-boil': (source, count, names) => `${source} serves ${names}, instead of ${count} pots of water`,
};

/** What goes into boxes, over the boxes. */
function boxOf(
  plan: Plan,
  components: readonly { readonly id: string; readonly shared: Amount }[],
  price: (amount: Amount) => Priced,
): PlanAccount['box'] {
  const { packing } = plan.session;
  if (packing === undefined || packing.boxes === 0) return null;
  const packed = components.filter(({ id }) => !(packing.without ?? []).includes(id)).map(({ shared }) => shared);
  return { boxes: packing.boxes, each: price(times(sum(packed), 1 / packing.boxes)) };
}
