/** What makes a plan good, as objectives in the order of the session's intent. */
import type { Point, Tier } from '../engine/problem.ts';
import { minutesDown } from '../kitchen/scaling.ts';
import type { TierId } from '../kitchen/plan.ts';
import type { Intent, Session } from '../kitchen/session.ts';
import { durationMinutes } from '../kitchen/values.ts';
import { handsResource } from './hands.ts';
import type { Translation } from './legend.ts';
import { related, legendsOf } from './orders.ts';
import { end, start } from './problem-builder.ts';

/** Rank of the tiers by intent; `finish` stands for the latest start where there is a table time. */
const ORDER: Readonly<Record<Intent, readonly ('finish' | 'waiting' | 'energy' | 'calm')[]>> = {
  soonest: ['finish', 'waiting', 'energy', 'calm'],
  freshest: ['waiting', 'finish', 'energy', 'calm'],
  thriftiest: ['energy', 'finish', 'waiting', 'calm'],
  calmest: ['calm', 'finish', 'waiting', 'energy'],
};

/** Ids of the tiers of a session, most important first. */
export function tierIds(session: Session, intent: Intent): readonly TierId[] {
  return ORDER[intent].flatMap((id): TierId[] => {
    if (id !== 'finish') return [id];
    if (session.table === undefined) return ['finish'];
    return session.table.othersMayRunPast === true ? ['latest-start', 'others-finish'] : ['latest-start'];
  });
}

/** Hands-on tasks: those of the finish, and those that put away. */
function handsOn(
  t: Translation,
): readonly { readonly task: string; readonly inFinish: boolean; readonly forTable: boolean }[] {
  const people = new Set(t.crew.map((person) => handsResource(person.id)));
  const away = new Set(t.steps.filter((step) => !step.instance.inFinish).flatMap((step) => tasksOf(t, step.key)));
  const table = new Set(
    t.steps
      .filter((step) => t.session.table?.dishes.includes(step.instance.component.id) === true)
      .flatMap((step) => tasksOf(t, step.key)),
  );
  return t.builder.tasks
    .filter((task) => task.modes.some((mode) => mode?.uses.some((use) => people.has(use.resource))))
    .map((task) => ({ task: task.id, inFinish: !away.has(task.id), forTable: table.has(task.id) }));
}

/** Tasks of a step: its own key, its parts and its pieces. */
const tasksOf = (t: Translation, key: string): readonly string[] =>
  t.builder.tasks
    .map((task) => task.id)
    .filter((id) => id === key || id.startsWith(`${key}:`) || id.startsWith(`${key}~`));

/** Ends of the hands-on work that counts in the finish, whatever the tiers are. */
export const finishPoints = (t: Translation): readonly Exclude<Point, 'origin'>[] =>
  handsOn(t)
    .filter((each) => each.inFinish)
    .map((each) => end(each.task));

export function addTiers(t: Translation): void {
  const work = handsOn(t);
  const tiers: Readonly<Record<TierId, () => Tier>> = {
    finish: () => ({
      kind: 'latest',
      id: 'finish',
      terms: work.filter((each) => each.inFinish).map((each) => ({ point: end(each.task) })),
    }),
    'latest-start': () => {
      const at = minutesDown(durationMinutes(t.session.table!.at));
      return {
        kind: 'latest',
        id: 'latest-start',
        terms: work.map((each) => ({ point: start(each.task), plus: at, minus: true })),
      };
    },
    'others-finish': () => ({
      kind: 'latest',
      id: 'others-finish',
      terms: work.filter((each) => each.inFinish && !each.forTable).map((each) => ({ point: end(each.task) })),
    }),
    waiting: () => ({ kind: 'waiting', id: 'waiting', terms: waitingTerms(t) }),
    energy: () => ({ kind: 'cost', id: 'energy' }),
    calm: () => ({ kind: 'changes', id: 'calm', resources: t.crew.map((person) => handsResource(person.id)) }),
  };
  for (const id of tierIds(t.session, t.intent)) t.builder.tiers.push(tiers[id]());
}

const waitingTerms = (t: Translation): Extract<Tier, { kind: 'waiting' }>['terms'] =>
  t.steps.flatMap((after) =>
    after.instance.after.flatMap((order) =>
      order.best === null
        ? []
        : legendsOf(t, order.component, order.step)
            .filter((before) => related(before, after))
            .map((before) => ({
              weight: order.best!.weight,
              from: before.end,
              to: after.start,
              free: order.best!.minutes,
            })),
    ),
  );
