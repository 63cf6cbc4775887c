/** The command line's arguments, read and held to what each verb takes. */
import { parseArgs } from 'node:util';
import { Intent } from '../../solver/kitchen/session.ts';
import { nearest } from '../documents/issue-faults.ts';

export const VERBS = ['plan', 'check', 'why', 'improve', 'compare', 'model', 'chart', 'schema'] as const;
export type Verb = (typeof VERBS)[number];

export interface Options {
  readonly kitchens: readonly string[];
  readonly crew?: string;
  readonly intent?: Intent;
  readonly effort?: number;
  readonly seed?: number;
  readonly json: boolean;
  readonly out?: string;
  readonly dark: boolean;
  readonly data?: string;
}

export type Arguments =
  | { readonly kind: 'help' }
  | { readonly kind: 'wrong'; readonly problem: string }
  | { readonly kind: 'verb'; readonly verb: Verb; readonly subject: string; readonly options: Options };

const TAKES: Readonly<Record<Verb, readonly string[]>> = {
  plan: ['kitchen', 'crew', 'intent', 'effort', 'seed', 'json', 'out', 'data'],
  check: ['json', 'data'],
  why: ['json', 'data'],
  improve: ['kitchen', 'crew', 'effort', 'seed', 'json', 'data'],
  compare: ['kitchen', 'crew', 'intent', 'effort', 'seed', 'json', 'data'],
  model: ['kitchen', 'crew', 'intent', 'out', 'data'],
  chart: ['out', 'dark', 'data'],
  schema: ['out'],
};
const SUBJECT: Readonly<Record<Verb, string>> = {
  plan: 'SESSION',
  check: 'PLAN',
  why: 'PLAN',
  improve: 'SESSION',
  compare: 'SESSION',
  model: 'SESSION',
  chart: 'PLAN',
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
      effort: { type: 'string' },
      seed: { type: 'string' },
      json: { type: 'boolean' },
      out: { type: 'string' },
      dark: { type: 'boolean' },
      data: { type: 'string' },
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
      ...(values.crew === undefined ? {} : { crew: values.crew }),
      ...(intent === undefined ? {} : { intent }),
      ...(effort === undefined ? {} : { effort }),
      ...(seed === undefined ? {} : { seed }),
      ...(values.out === undefined ? {} : { out: values.out }),
      ...(values.data === undefined ? {} : { data: values.data }),
    },
  };
}

/** A whole number within limits; undefined where none was given, null where it is something else. */
function whole(text: string | undefined, least: number, most: number): number | null | undefined {
  if (text === undefined) return undefined;
  const value = /^\d+(e\d+)?$/.test(text) ? Number(text) : NaN;
  return Number.isSafeInteger(value) && value >= least && value <= most ? value : null;
}
