/** A help: one thing more in the kitchen, one more pair of hands, or a step that is done sooner. */
import type { Problem } from '../engine/problem.ts';
import type { Translation } from '../translate/legend.ts';
import type { SessionInput } from '../translate/session-to-problem.ts';

/** In the order of what is cheapest for a cook. */
export const HELP_KINDS = [
  'board',
  'bowl',
  'tool',
  'tray',
  'pan',
  'place',
  'by-hand',
  'by-itself',
  'hands',
  'appliance',
  'burner',
  'rack',
  'oven',
] as const;
export type HelpKind = (typeof HELP_KINDS)[number];

/** As it is told to a user. */
export interface HelpWords {
  /** Unique in a session: `burner big-right`, `by-hand carrots/peel`. */
  readonly id: string;
  readonly kind: HelpKind;
  /** What there would be: "another big pan", "peel the carrots (Roast roots), 5 min less work". */
  readonly words: string;
  /** What is to be thought of with it; empty: nothing. */
  readonly caution: string;
}

/** With the way to have it. Either way only ever allows more: a plan without the help is one with it. */
export interface Help extends HelpWords {
  readonly relaxInput?: (input: SessionInput) => SessionInput;
  readonly relaxProblem?: (problem: Problem, translation: Translation) => Problem;
}

export const cheapness = (help: HelpWords): number => HELP_KINDS.indexOf(help.kind);

/** Only the words, as they travel to the screen. */
export const helpWords = ({ id, kind, words, caution }: HelpWords): HelpWords => ({ id, kind, words, caution });
