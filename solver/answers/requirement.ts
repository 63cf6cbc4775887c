/** A requirement: one thing that a user asks of a session, kitchen or component, which could be given up. */
import type { Problem } from '../engine/problem.ts';
import type { SessionInput } from '../translate/session-to-problem.ts';

/** In the order in which a cook would rather give them up; `firmness` is the place in it. */
export const REQUIREMENT_KINDS = [
  'pin',
  'absence',
  'table',
  'length',
  'hours',
  'limit',
  'gap',
  'power',
  'equipment',
  'hands',
  'order',
] as const;
export type RequirementKind = (typeof REQUIREMENT_KINDS)[number];

/** As it is told to a user. */
export interface RequirementWords {
  /** Unique in a session with its kitchen and components: document and path. */
  readonly id: string;
  readonly kind: RequirementKind;
  /** A sentence that a cook understands, without its full stop: "the roast is on the table at 18:45". */
  readonly words: string;
  /** What giving it up would be, as an imperative: "move the table later". */
  readonly mend: string;
  /** Title of the document: `session weeknight-roast`. */
  readonly document: string;
  /** Place in it: `table.at`. */
  readonly path: string;
}

/** With the way to do without it: a change of the documents, or of the problem made from them. Either only ever takes away. */
export interface Requirement extends RequirementWords {
  readonly relaxInput?: (input: SessionInput) => SessionInput;
  readonly relaxProblem?: (problem: Problem) => Problem;
  /** Of what can be given up in part: how many minutes it asks for, and more of them. */
  readonly byMinutes?: ByMinutes;
}

/** A requirement of at most so many minutes. */
export interface ByMinutes {
  readonly asked: number;
  readonly relaxTo: (minutes: number) => (input: SessionInput) => SessionInput;
  /** What giving up just so much would be. @param least no fewer minutes are enough, by proof */
  readonly mendTo: (minutes: number, least: boolean) => string;
}

export const firmness = (requirement: RequirementWords): number => REQUIREMENT_KINDS.indexOf(requirement.kind);

/** Only the words, as they travel to the screen. */
export const wordsOf = ({ id, kind, words, mend, document, path }: RequirementWords): RequirementWords => ({
  id,
  kind,
  words,
  mend,
  document,
  path,
});
