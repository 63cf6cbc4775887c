/** Washes that exist only when needed: of boards, tools and vessels, and of hands, each with hands, sink and minutes. */
import type { Mode } from '../engine/problem.ts';
import type { Kitchen } from '../kitchen/kitchen.ts';
import type { Plan } from '../kitchen/plan.ts';
import { minutesUp } from '../kitchen/scaling.ts';
import { handsMode, handsResource } from './hands.ts';
import type { Translation } from './legend.ts';
import { SOILED } from './places.ts';
import { picks, end, start } from './problem-builder.ts';
import { handWashMinutes } from './safety.ts';

/** Most washes of one thing in a session. Vessels are washed once between two dishes; boards, tools and hands more often. */
const MOST_WASHES = { hands: 3, board: 3, tool: 2, pan: 2, tray: 1, bowl: 1 } as const;

/**
 * Offers washes of every thing whose uses may clash. After all uses are known.
 *
 * @param washed by id of a thing or a person: washes offered at least. A board that is washed washes the hands too, which may be all that
 *   is left of it to be needed where a step on the board is left out
 */
export function addWashes(t: Translation, washed: ReadonlyMap<string, number> = new Map()): void {
  for (const resource of [...t.builder.resources.keys()]) {
    const [kind, id] = resource.split(':') as [string, string];
    const hands = kind === 'hands';
    if (!hands && (!SOILED.has(kind) || kind === 'appliance')) continue;
    const clashing = t.builder.clashingMarks(resource);
    const least = washed.get(thingWashed(kind, id)) ?? 0;
    if (clashing.size === 0 && least === 0) continue;
    const soiling = t.builder
      .usesOf(resource)
      .filter(({ use }) => use.leaves?.some((mark) => clashing.has(mark)) === true);
    const dirty = new Set(soiling.map(({ task }) => task)).size;
    const takes = hands ? handWashMinutes(t) : t.kitchen.washing[kind as keyof Kitchen['washing']];
    const minutes = Math.max(1, minutesUp(takes));
    const most = Math.min(MOST_WASHES[kind as keyof typeof MOST_WASHES], dirty);
    addWashesOf(t, resource, kind, id, Math.max(most, least), minutes);
  }
}

const thingWashed = (kind: string, id: string): string => (kind === 'hands' ? `${id}-hands` : id);

/** How often a plan washes each thing, as `addWashes` takes it. */
export function washesIn(plan: Plan): ReadonlyMap<string, number> {
  const washed = new Map<string, number>();
  for (const { kind, id } of plan.steps) {
    const [, thing, number] = kind === 'wash' ? (id.match(/^wash\/(.*)\.(\d+)$/) ?? []) : [];
    if (thing !== undefined) washed.set(thing, Math.max(Number(number), washed.get(thing) ?? 0));
  }
  return washed;
}

function addWashesOf(t: Translation, resource: string, kind: string, id: string, count: number, minutes: number): void {
  const { builder } = t;
  const hands = kind === 'hands';
  const people = hands ? [id] : t.crew.map((person) => person.id);
  let before: { task: string; choice: string } | null = null;
  for (let number = 1; number <= count; number++) {
    const task = `wash/${thingWashed(kind, id)}.${number}`;
    const choice = builder.choice(`wash:${task}`, ['none', ...people])!;
    const modes: (Mode | null)[] = [
      null,
      ...people.map((person): Mode => {
        const mode = handsMode(person, {
          task,
          name: null,
          shortest: minutes,
          longest: minutes,
          who: null,
          when: [],
          group: 'wash',
          cleans: true,
        });
        return {
          ...mode,
          uses: [
            ...mode.uses,
            { resource: 'sink:sink', amount: 1 },
            ...(hands ? [] : [{ resource, amount: 1, cleans: true }]),
            ...(hands || kind === 'tool' ? [] : [{ resource: 'drying:drying', amount: 1 }]),
          ],
        };
      }),
    ];
    builder.task(task, modes, choice, [], 'wash');
    if (before !== null) {
      // The n-th wash comes after the one before it, and only if there is one.
      builder.forbid([...picks(before.choice, 0), ...picks(choice, ...people.map((_, index) => index + 1))]);
      builder.atLeast(end(before.task), start(task), 0);
    }
    before = { task, choice };
    t.washes.push({
      task,
      choice,
      people,
      thing: hands ? handsResource(id) : resource,
      number,
      place: hands ? null : { kind: kind as 'pan' | 'tray' | 'bowl' | 'board' | 'tool', id, amount: 1 },
    });
  }
}
