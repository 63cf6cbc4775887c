/** The command line's arguments, read and held to what each verb takes. */
import { parseArgs } from 'node:util';
import { safeParse } from 'valibot';
import { Intent } from '../../solver/kitchen/session.ts';
import { Duration, durationMinutes } from '../../solver/kitchen/values.ts';
import { nearest } from '../documents/issue-faults.ts';

export const VERBS = [
  'plan',
  'check',
  'why',
  'improve',
  'sure',
  'replan',
  'compare',
  'model',
  'chart',
  'labels',
  'account',
  'nutrition',
  'coolings',
  'schema',
] as const;
export type Verb = (typeof VERBS)[number];

export interface Options {
  readonly kitchens: readonly string[];
  readonly crew?: string;
  readonly intent?: Intent;
  /** Safety rules to plan by: a file, or an id. */
  readonly authority?: string;
  readonly effort?: number;
  readonly seed?: number;
  readonly json: boolean;
  readonly out?: string;
  readonly dark: boolean;
  /** The chart with its binding chain; absent: without. */
  readonly why?: boolean;
  readonly data?: string;
  /** Minutes from the start of the session. */
  readonly now?: number;
  /** What cooks tell of steps, in the order written. */
  readonly told?: readonly Told[];
  /** Minutes of finish that a changed step weighs. */
  readonly penalty?: number;
  /** Minutes from the start of the session to ask the chance of finishing by. */
  readonly by?: readonly number[];
  readonly samples?: number;
}

/** What is told of a step; minutes where it says when, or how many more. */
export interface Told {
  readonly what: (typeof TELLS)[number];
  readonly step: string;
  readonly minutes?: number;
}
const TELLS = ['started', 'done', 'late', 'waiting', 'skip'] as const;

export type Arguments =
  | { readonly kind: 'help' }
  | { readonly kind: 'wrong'; readonly problem: string }
  | { readonly kind: 'verb'; readonly verb: Verb; readonly subject: string; readonly options: Options };

const TAKES: Readonly<Record<Verb, readonly string[]>> = {
  plan: ['kitchen', 'crew', 'intent', 'authority', 'effort', 'seed', 'json', 'out', 'data'],
  check: ['json', 'data'],
  why: ['json', 'data'],
  improve: ['kitchen', 'crew', 'authority', 'effort', 'seed', 'json', 'data'],
  sure: ['by', 'samples', 'seed', 'json', 'data'],
  replan: ['now', ...TELLS, 'penalty', 'effort', 'seed', 'json', 'out', 'data'],
  compare: ['kitchen', 'crew', 'intent', 'authority', 'effort', 'seed', 'json', 'data'],
  model: ['kitchen', 'crew', 'intent', 'authority', 'out', 'data'],
  chart: ['out', 'dark', 'why', 'data'],
  labels: ['json', 'out', 'data'],
  account: ['json', 'data'],
  nutrition: ['json', 'data'],
  coolings: ['json', 'data'],
  schema: ['out'],
};
const SUBJECT: Readonly<Record<Verb, string>> = {
  plan: 'SESSION',
  check: 'PLAN',
  why: 'PLAN',
  improve: 'SESSION',
  sure: 'PLAN',
  replan: 'PLAN',
  compare: 'SESSION',
  model: 'SESSION',
  chart: 'PLAN',
  labels: 'PLAN',
  account: 'PLAN',
  nutrition: 'SESSION',
  coolings: 'SESSION',
  schema: 'KIND',
};

/**
 * Reads the arguments after the program's name.
 * @returns the verb with its subject and options; or what is wrong, as a sentence
 */
export function readArguments(args: readonly string[]): Arguments {
  try {
    return read(args);
  } catch (error) {
    // parseArgs throws a TypeError with a sentence for the user.
    if (error instanceof TypeError) return { kind: 'wrong', problem: error.message };
    throw error;
  }
}

function read(args: readonly string[]): Arguments {
  const { values, positionals } = parseArgs({
    args: [...args],
    allowPositionals: true,
    options: {
      kitchen: { type: 'string', multiple: true },
      crew: { type: 'string' },
      intent: { type: 'string' },
      authority: { type: 'string' },
      effort: { type: 'string' },
      seed: { type: 'string' },
      json: { type: 'boolean' },
      out: { type: 'string' },
      dark: { type: 'boolean' },
      why: { type: 'boolean' },
      data: { type: 'string' },
      now: { type: 'string' },
      started: { type: 'string', multiple: true },
      done: { type: 'string', multiple: true },
      late: { type: 'string', multiple: true },
      waiting: { type: 'string', multiple: true },
      skip: { type: 'string', multiple: true },
      penalty: { type: 'string' },
      by: { type: 'string', multiple: true },
      samples: { type: 'string' },
      help: { type: 'boolean', short: 'h' },
    },
  });
  const [named, subject, ...more] = positionals;
  if (values.help === true || named === 'help') return { kind: 'help' };
  const wrong = (problem: string): Arguments => ({ kind: 'wrong', problem });
  if (named === undefined) return wrong('no verb was given');
  const verb = VERBS.find((known) => known === named);
  if (verb === undefined) {
    const meant = nearest(named, VERBS);
    return wrong(`there is no verb "${named}"${meant === null ? '' : `; did you mean "${meant}"?`}`);
  }
  if (subject === undefined) return wrong(`afterheat ${verb} takes a ${SUBJECT[verb]}`);
  if (more.length > 0) return wrong(`afterheat ${verb} takes one ${SUBJECT[verb]}, not also "${more.join(' ')}"`);
  const odd = Object.keys(values).find((option) => !TAKES[verb].includes(option));
  if (odd !== undefined) return wrong(`afterheat ${verb} takes no --${odd}`);
  const intent = Intent.options.find((known) => known === values.intent);
  if (values.intent !== undefined && intent === undefined)
    return wrong(`--intent is one of ${Intent.options.join(', ')}, not "${values.intent}"`);
  const effort = whole(values.effort, 1, 1e15);
  if (effort === null) return wrong(`--effort is a whole number of work units from 1, not "${values.effort}"`);
  const seed = whole(values.seed, 0, 4_294_967_295);
  if (seed === null) return wrong(`--seed is a whole number from 0 to 4294967295, not "${values.seed}"`);
  const now = minutesOf(values.now);
  if (now === null || (verb === 'replan' && now === undefined))
    return wrong(`afterheat replan takes --now, a time such as PT40M from the start, not "${values.now ?? ''}"`);
  const told: Told[] = [];
  for (const what of TELLS)
    for (const text of values[what] ?? []) {
      const read = toldOf(what, text);
      if (read === null) return wrong(`--${what} is ${TOLD_WORDS[what]}, not "${text}"`);
      told.push(read);
    }
  const penalty = whole(values.penalty, 0, 1000);
  if (penalty === null) return wrong(`--penalty is a whole number of minutes from 0, not "${values.penalty}"`);
  const by = (values.by ?? []).map(minutesOf);
  if (by.some((minutes) => minutes === null)) return wrong(`--by is a time such as PT60M from the start`);
  const samples = whole(values.samples, 1, 1_000_000);
  if (samples === null) return wrong(`--samples is a whole number from 1 to 1000000, not "${values.samples}"`);
  const kitchens = values.kitchen ?? [];
  if (verb !== 'compare' && kitchens.length > 1) return wrong(`afterheat ${verb} takes one --kitchen`);
  return {
    kind: 'verb',
    verb,
    subject,
    options: {
      kitchens,
      json: values.json === true,
      dark: values.dark === true,
      ...(values.why === true ? { why: true } : {}),
      ...(values.crew === undefined ? {} : { crew: values.crew }),
      ...(intent === undefined ? {} : { intent }),
      ...(values.authority === undefined ? {} : { authority: values.authority }),
      ...(effort === undefined ? {} : { effort }),
      ...(seed === undefined ? {} : { seed }),
      ...(values.out === undefined ? {} : { out: values.out }),
      ...(values.data === undefined ? {} : { data: values.data }),
      ...(told.length === 0 ? {} : { told }),
      ...(by.length === 0 ? {} : { by: by.flatMap((minutes) => minutes ?? []) }),
      ...(now === undefined ? {} : { now }),
      ...(penalty === undefined ? {} : { penalty }),
      ...(samples === undefined ? {} : { samples }),
    },
  };
}

const TOLD_WORDS: Readonly<Record<Told['what'], string>> = {
  started: 'a step and when it began, such as lentils/boil=PT35M',
  done: 'a step, and when it was over where that is not now, such as lentils/boil=PT35M',
  late: 'a step and how many minutes from now it still takes, such as lentils/boil=PT10M',
  waiting: 'a step that has not begun',
  skip: 'a step that is left out',
};

/** `STEP` or `STEP=PT10M`; null where it is not as the word asks. */
function toldOf(what: Told['what'], text: string): Told | null {
  const [step, time, ...more] = text.split('=');
  const minutes = minutesOf(time);
  if (step === undefined || step === '' || more.length > 0 || minutes === null) return null;
  const timed = what === 'started' || what === 'late';
  if (timed !== (minutes !== undefined) && what !== 'done') return null;
  return { what, step, ...(minutes === undefined ? {} : { minutes }) };
}

/** Whole minutes of an ISO 8601 duration; undefined where none was given, null where it is something else. */
function minutesOf(text: string | undefined): number | null | undefined {
  if (text === undefined) return undefined;
  return safeParse(Duration, text).success ? Math.round(durationMinutes(text)) : null;
}

/** A whole number within limits; undefined where none was given, null where it is something else. */
function whole(text: string | undefined, least: number, most: number): number | null | undefined {
  if (text === undefined) return undefined;
  const value = /^\d+(e\d+)?$/.test(text) ? Number(text) : NaN;
  return Number.isSafeInteger(value) && value >= least && value <= most ? value : null;
}
