/** Hands: each person is an exclusive resource with the times they are there, and each piece of work a choice among those who may do it. */
import type { Literal, Mode, Use } from '../engine/problem.ts';
import { durationMinutes } from '../kitchen/values.ts';
import { minutesDown, minutesUp } from '../kitchen/scaling.ts';
import type { Operation, Translation, WhoOptions } from './legend.ts';

export const handsResource = (person: string): string => `hands:${person}`;

/** Declares the crew. Someone is free within `there`, or throughout. */
export function declareHands(t: Translation): void {
  for (const person of t.crew) {
    const id = t.builder.resource(handsResource(person.id), 1);
    if (person.there === undefined) continue;
    let free = 0;
    const windows = person.there
      .map((window) => ({
        from: minutesUp(durationMinutes(window.from)),
        until: minutesDown(durationMinutes(window.until)),
      }))
      .sort((a, b) => a.from - b.from);
    for (const window of windows) {
      t.builder.absence(id, free, window.from);
      free = Math.max(free, window.until);
    }
    t.builder.absence(id, free, t.builder.horizon);
  }
}

/** Soil on the hands of whoever does the work. */
export interface HandSoil {
  readonly leaves: readonly string[];
  readonly avoids: readonly string[];
}

/** Of hands that touch no food. */
export const CLEAN: HandSoil = { leaves: [], avoids: [] };

export interface WorkOptions {
  readonly task: string;
  readonly name: string | null;
  readonly shortest: number;
  readonly longest: number;
  /** What the person must be able to do; null: anybody. */
  readonly who: string | null;
  readonly when: readonly Literal[];
  readonly group: string;
  readonly soil?: HandSoil;
  /** Taken besides the hands. */
  readonly uses?: readonly Use[];
  /** The work leaves the hands washed. */
  readonly cleans?: boolean;
  readonly probe?: boolean;
  readonly check?: boolean;
}

/** People of the crew who may do work that asks for `who`. */
export function ableTo(t: Translation, who: string | null): readonly string[] {
  return t.crew.filter((person) => who === null || person.can.includes(who)).map((person) => person.id);
}

/** The mode in which one person does the work. */
export function handsMode(person: string, options: WorkOptions): Mode {
  const { leaves, avoids } = options.soil ?? CLEAN;
  const hands: Use = {
    resource: handsResource(person),
    amount: 1,
    ...(leaves.length > 0 ? { leaves } : {}),
    ...(avoids.length > 0 ? { avoids } : {}),
    ...(options.cleans === true ? { cleans: true } : {}),
  };
  return { shortest: options.shortest, longest: options.longest, uses: [hands, ...(options.uses ?? [])] };
}

/** Adds a piece of hands-on work. A fault is noted where nobody of the crew may do it. */
export function addWork(t: Translation, options: WorkOptions): Operation {
  const people = ableTo(t, options.who);
  if (people.length === 0) {
    t.faults.push({
      document: `session ${t.session.id}`,
      path: 'people',
      found: `nobody of this crew who can "${options.who}" for ${options.task}`,
      wanted: 'at least one person who may do it',
      mend: `add "${options.who}" to what somebody can do, or choose another crew`,
    });
  }
  const who: WhoOptions = { people, choice: t.builder.choice(`who:${options.task}`, people) };
  t.builder.task(
    options.task,
    people.length === 0 ? [handsModeOfNobody(options)] : people.map((person) => handsMode(person, options)),
    who.choice,
    options.when,
    options.group,
  );
  return {
    task: options.task,
    who,
    minutes: options.shortest,
    name: options.name,
    probe: options.probe === true,
    check: options.check === true,
  };
}

/** Keeps the problem well formed beside a fault that refuses it anyway. */
const handsModeOfNobody = (options: WorkOptions): Mode => ({
  shortest: options.shortest,
  longest: options.longest,
  uses: [],
});
