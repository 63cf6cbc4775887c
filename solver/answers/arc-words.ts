/** What an arc of a plan's order says in a cook's words: why what it leads to is not sooner. */
import type { OrderArc } from '../engine/explain/plan-order.ts';
import type { Lag } from '../engine/problem.ts';
import type { ChainReason } from '../kitchen/chain.ts';
import type { PlannedStep } from '../kitchen/plan.ts';
import type { Translated } from '../translate/legend.ts';
import { afterheatName } from '../translate/requirement-names.ts';
import type { Owner } from './task-owners.ts';
import { the } from './the.ts';
import { nameOfThing } from './thing-names.ts';

interface DialWindow {
  readonly function: string;
  readonly leastC: number;
  readonly mostC: number;
}

export interface Words {
  readonly why: ChainReason;
  /** The end of a sentence: `waits for Mara's hands`. */
  readonly because: string;
  /** What goes on in the time between, where that is not a part of either step. */
  readonly meanwhile?: { readonly name: string; readonly thing: string };
}

/** The step's name with its component's, where that is not told already. */
export function stepWords({ translation: t }: Translated, step: PlannedStep, beside?: PlannedStep): string {
  const component = t.components.find((each) => each.id === step.component);
  // The name of the step, not of its way.
  const name = component?.steps.find((each) => each.id === step.step)?.name ?? step.name;
  return component === undefined || beside?.component === step.component ? name : `${name} (${component.name})`;
}

/**
 * Why what the arc leads to waits.
 *
 * @param from owner of what is waited for; null at the origin
 * @param to owner of what waits; null at the origin
 */
export function arcWords(translated: Translated, arc: OrderArc, from: Owner | null, to: Owner | null): Words {
  const { problem, translation: t } = translated;
  const { why } = arc;
  const stepTo = to?.kind === 'step' ? to.step : undefined;
  const what =
    from === null ? 'the start' : from.kind === 'step' ? stepWords(translated, from.step, stepTo) : from.doing;
  switch (why.kind) {
    case 'resource':
      return resourceWords(translated, why.resource);
    case 'calendar':
      return { why: 'away', because: awayWords(translated, why.resource) };
    case 'state':
      return stateWords(translated, why.state, why.from, why.to);
    case 'soil': {
      const thing = thingWords(translated, why.resource);
      return {
        why: 'clean',
        because: why.cleaner === null ? `lets what needs ${thing} clean go first` : `waits for clean ${bare(thing)}`,
      };
    }
    case 'reservoir': {
      const pool = t.pools.find(({ pool: { id } }) => why.reservoir.startsWith(`level:${id}.`));
      return {
        why: 'water',
        because: `waits for ${pool === undefined ? 'water' : the(pool.pool.name)} to be full enough`,
      };
    }
    case 'lag':
      return lagWords(problem.lags[why.lag]!, arc.least, what, from, to);
    case 'horizon':
      return arc.to === 0
        ? { why: 'asked', because: 'the session ends' }
        : { why: 'start', because: 'begins with the session' };
    case 'tier':
      throw new Error('a plan’s own order has no arcs of tiers');
    case 'total':
    case 'length':
      return { why: 'order', because: `goes on from ${what}` };
  }
}

function lagWords(lag: Lag, least: number, what: string, from: Owner | null, to: Owner | null): Words {
  const asked = lag.requirement;
  const pinned = asked?.startsWith('pin ') === true;
  if (pinned && (from === null || to === null)) return { why: 'asked', because: 'is pinned to this time' };
  if (from === null) return { why: 'asked', because: asked ?? `${least} min from the start of the session` };
  if (to === null) return { why: 'table', because: asked ?? 'is done in time' };
  if (least < 0) {
    const much = `at most ${-least} min before ${what}`;
    return { why: 'limit', because: asked === undefined ? `begins ${much}` : `begins ${much}: ${asked}` };
  }
  if (from.kind === 'thing' && from.doing.endsWith('comes to the boil'))
    return { why: 'water', because: `waits until ${from.doing}` };
  if (from.kind === 'step' && from.step.kind === 'preheat')
    return { why: 'heat', because: 'waits until the oven is hot' };
  if (lag.to !== 'origin' && asked === afterheatName(lag.to.task))
    return { why: 'heat', because: 'waits until the oven has fallen far enough' };
  if (from.kind === 'step' && to.kind === 'step' && sameWork(from.step, to.step))
    return { why: 'order', because: 'goes on after a pause' };
  return { why: 'order', because: least > 0 ? `follows ${what} by ${least} min or more` : `follows ${what}` };
}

/** Two pieces of one step. */
const sameWork = (a: PlannedStep, b: PlannedStep): boolean =>
  a.component === b.component && a.step === b.step && a.batch === b.batch;

function stateWords({ problem, translation: t }: Translated, state: string, from: number, to: number): Words {
  const resource = problem.states.find((each) => each.id === state)!;
  const oven = t.ovens.find((each) => `oven:${each.oven.id}` === state)?.oven;
  if (oven === undefined) return { why: 'clean', because: 'is kept from under what drips' };
  const classes = t.ovenClasses.get(oven.id) ?? [];
  const [before, after] = [classes[from], classes[to]];
  const name = after === undefined ? resource.classes[to]! : dialWords(after, before);
  const because = `waits for ${the(oven.name)} at ${name}`;
  if (before === undefined || after === undefined) return { why: 'heat', because };
  const turn = before.mostC < after.leastC ? 'heats' : before.leastC > after.mostC ? 'cools' : 'turns';
  return { why: 'heat', because, meanwhile: { name: `${the(oven.name)} ${turn} to ${name}`, thing: oven.id } };
}

/** `190–205 °C`; with the function of the oven where that is another one than before. */
function dialWords(after: DialWindow, before: DialWindow | undefined): string {
  const celsius = after.leastC === after.mostC ? `${after.leastC} °C` : `${after.leastC}–${after.mostC} °C`;
  return before === undefined || before.function === after.function ? celsius : `${celsius}, ${after.function}`;
}

function resourceWords(translated: Translated, resource: string): Words {
  const [kind, id] = partsOf(resource);
  const { translation: t } = translated;
  switch (kind) {
    case 'hands':
      return { why: 'hands', because: `waits for ${personName(translated, id)}’s hands` };
    case 'power': {
      const limit = t.kitchen.power.find((each) => each.id === id);
      return { why: 'power', because: `waits for power within ${limit?.name ?? 'the limit'}` };
    }
    case 'insert':
    case 'tiers':
    case 'water':
      return { why: 'place', because: `waits for room in ${poolName(translated, id)}` };
    default:
      return { why: 'place', because: `waits for ${thingWords(translated, resource)}` };
  }
}

function awayWords(translated: Translated, resource: string): string {
  const [kind, id] = partsOf(resource);
  if (kind === 'hands') return `waits until ${personName(translated, id)} is there`;
  if (kind === 'rack' || kind === 'dial') {
    const { ovens } = translated.translation.kitchen;
    const oven = ovens.find((each) => each.id === id.split('/')[0]);
    return `waits until ${the(oven?.name ?? 'oven')} is there`;
  }
  return `waits until ${thingWords(translated, resource)} is there`;
}

/** The thing behind a resource: `room on the upper rack of oven`, `the stock pot`, `Mara’s hands`. */
function thingWords(translated: Translated, resource: string): string {
  const { kitchen } = translated.translation;
  const [kind, id] = partsOf(resource);
  switch (kind) {
    case 'hands':
      return `${personName(translated, id)}’s hands`;
    case 'rack': {
      const [ovenId, rackId] = id.split('/');
      const oven = kitchen.ovens.find((each) => each.id === ovenId);
      const rack = oven?.racks.find((each) => each.id === rackId);
      return `room on ${the(rack?.name ?? rackId!)} of ${the(oven?.name ?? ovenId!)}`;
    }
    case 'burner': {
      const name = kitchen.hob.burners.find((each) => each.id === id)?.name ?? id;
      return /burner|flame/i.test(name) ? the(name) : `${the(name)} burner`;
    }
    case 'insert':
    case 'tiers':
    case 'water':
      return poolName(translated, id);
    case 'sink':
      return 'the sink';
    case 'resting':
    case 'cooling':
      return `room where food ${kind === 'resting' ? 'rests' : 'cools'}`;
    case 'drying':
      return 'room to dry things';
    default:
      return the(nameOfThing(kitchen, id));
  }
}

const bare = (thing: string): string => thing.replace(/^the /, '');

function partsOf(resource: string): readonly [string, string] {
  const at = resource.indexOf(':');
  return [resource.slice(0, at), resource.slice(at + 1)];
}

const personName = ({ translation: t }: Translated, id: string): string =>
  t.crew.find((person) => person.id === id)?.name ?? id;

const poolName = ({ translation: t }: Translated, id: string): string =>
  the(t.pools.find(({ pool }) => pool.id === id)?.pool.name ?? id);
