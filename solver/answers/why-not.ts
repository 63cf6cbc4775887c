/**
 * Why not: where no plan can exist, a smallest set of the user's own requirements that clash, and the single ones whose removal
 * mends it. Requirements are given up one by one in the documents and in the problem made from them; each answer of the engine
 * about what is left is a proof, so a clash that is told is one.
 */
import type { Problem } from '../engine/problem.ts';
import { sessionToProblem, type SessionInput } from '../translate/session-to-problem.ts';
import { fits } from './fits.ts';
import { firmness, wordsOf, type Requirement, type RequirementWords } from './requirement.ts';
import { requirementsOf } from './requirements-of.ts';
import { smallestClash, type Verdict } from './smallest-clash.ts';

export interface WhyNotOptions {
  readonly seed: number;
  /** Most work units in all. */
  readonly effort: number;
  readonly shouldStop?: () => boolean;
  /** 0–1 of the effort spent. */
  readonly onProgress?: (share: number) => void;
}

export type WhyNot =
  | {
      readonly kind: 'clash';
      /** They clash together. Empty: the steps as written clash by themselves, whatever the kitchen and the session. */
      readonly clash: readonly RequirementWords[];
      /** Any fewer of them can be kept together, shown by a plan for each; false: not all of it could be shown in the effort given. */
      readonly minimal: boolean;
      /** Each alone, given up, lets all the others be kept: shown by a plan. */
      readonly singles: readonly RequirementWords[];
      /** Where no single one is enough: some that, given up together, let all the others be kept. Empty: none were found. */
      readonly together: readonly RequirementWords[];
      readonly stopped: boolean;
      readonly work: number;
    }
  /** There is a plan after all. */
  | { readonly kind: 'fits'; readonly work: number }
  /** Whether there is a plan could not be told in the effort given. */
  | { readonly kind: 'unknown'; readonly work: number }
  /** The documents cannot be planned at all. */
  | { readonly kind: 'refused' };

/** Share of the whole effort that one set of requirements may take. */
const SHARE = 1 / 16;
/** Share of the effort left that may go into how little is enough. */
const MENDING = 1 / 4;
/** Clashes looked at, one after the other, to find what must be given up together. */
const MOST_TOGETHER = 4;

/** Asks for a session that has no plan. Same input, seed and effort give the same answer. */
export function whyNot(input: SessionInput, options: WhyNotOptions): WhyNot {
  const asking = new Asking(input, options);
  const { all } = asking;
  if (keepingOnly(input, all, all) === null) return { kind: 'refused' };
  const whole = asking.test(all);
  if (whole !== 'clash') return { kind: whole, work: asking.work };
  const { members, minimal } = smallestClash(all, (kept) => asking.test(kept));
  // Whatever mends it is in every clash, so in this one.
  const singles = members.filter((member) => asking.test(all.filter((other) => other !== member)) === 'fits');
  const together = singles.length > 0 ? [] : givenUpTogether(asking, members);
  return {
    kind: 'clash',
    clash: members.map(wordsOf),
    minimal,
    singles: singles.map((single) => ({ ...wordsOf(single), mend: asking.mendOf(single) })),
    together: together.map(wordsOf),
    stopped: asking.stopped,
    work: asking.work,
  };
}

/** Gives up the least firm member of clash after clash until the rest fits; then takes back what need not be given up. */
function givenUpTogether(asking: Asking, first: readonly Requirement[]): readonly Requirement[] {
  let dropped: readonly Requirement[] = [];
  let clash = first;
  const kept = (): readonly Requirement[] => asking.all.filter((each) => !dropped.includes(each));
  for (let round = 0; ; round++) {
    if (clash.length === 0 || round === MOST_TOGETHER) return [];
    const least = Math.min(...clash.map(firmness));
    dropped = [...dropped, clash.find((member) => firmness(member) === least)!];
    const verdict = asking.test(kept());
    if (verdict === 'fits') break;
    if (verdict === 'unknown') return [];
    clash = smallestClash(kept(), (some) => asking.test(some)).members;
  }
  for (const each of dropped) {
    const fewer = dropped.filter((other) => other !== each);
    if (fewer.length > 0 && asking.test(asking.all.filter((other) => !fewer.includes(other))) === 'fits')
      dropped = fewer;
  }
  return dropped;
}

/**
 * The problem in which only some requirements hold.
 *
 * @param all of the input
 * @param kept those of them that hold
 * @returns null where the documents make no problem
 */
export function keepingOnly(
  input: SessionInput,
  all: readonly Requirement[],
  kept: readonly Requirement[],
): Problem | null {
  const dropped = all.filter((each) => !kept.includes(each));
  const relaxed = dropped.reduce((given, { relaxInput }) => relaxInput?.(given) ?? given, input);
  const translated = sessionToProblem(relaxed);
  if (!translated.ok) return null;
  return dropped.reduce((problem, { relaxProblem }) => relaxProblem?.(problem) ?? problem, translated.problem);
}

/** Asks the engine about sets of requirements, and remembers what it said. */
class Asking {
  /** Least firm first: they are rather in the answer. */
  readonly all: readonly Requirement[];
  work = 0;
  stopped = false;
  readonly #known = new Map<string, Verdict>();
  readonly #input: SessionInput;
  readonly #options: WhyNotOptions;

  constructor(input: SessionInput, options: WhyNotOptions) {
    this.#input = input;
    this.#options = options;
    this.all = [...requirementsOf(input)].sort((a, b) => firmness(a) - firmness(b));
  }

  /**
   * What giving up a requirement would be, with as few minutes as the effort left can show to be enough.
   *
   * @param single without it all the others can be kept
   */
  mendOf(single: Requirement): string {
    const { byMinutes, mend } = single;
    if (byMinutes === undefined || this.stopped) return mend;
    const { seed, effort, shouldStop } = this.#options;
    const others = this.all.filter((each) => each !== single);
    let over = byMinutes.asked;
    let enough: number | null = null;
    let least = true;
    // What a first plan takes, then halving what lies between.
    for (let left = (effort - this.work) * MENDING; left > 0 && (enough === null || over + 1 < enough);) {
      const minutes: number | null = enough === null ? null : Math.floor((over + enough) / 2);
      const input = minutes === null ? this.#input : byMinutes.relaxTo(minutes)(this.#input);
      const kept = minutes === null ? others : this.all;
      const problem = keepingOnly(input, this.all, kept);
      if (problem === null) break;
      const most = Math.min(left, effort * SHARE);
      const answer = fits(problem, { seed, effort: most, ...(shouldStop === undefined ? {} : { shouldStop }) });
      const spent = answer.work + problem.tasks.length * 10;
      this.work += spent;
      left -= spent;
      if (answer.kind === 'fits') {
        const ends = answer.solution.tasks.map((task) => task?.end ?? 0);
        enough = Math.max(over + 1, ...ends);
      } else if (answer.kind === 'clash' && minutes !== null) over = minutes;
      else {
        least = false;
        break;
      }
    }
    if (enough === null) return mend;
    return byMinutes.mendTo(enough, least && over + 1 >= enough);
  }

  test(kept: readonly Requirement[]): Verdict {
    const key = kept
      .map(({ id }) => id)
      .sort()
      .join('\n');
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    const { seed, effort, shouldStop, onProgress } = this.#options;
    const left = Math.min(effort - this.work, effort * SHARE);
    this.stopped ||= left <= 0 || shouldStop?.() === true;
    const problem = this.stopped ? null : keepingOnly(this.#input, this.all, kept);
    if (problem === null) return 'unknown';
    const answer = fits(problem, { seed, effort: left, ...(shouldStop === undefined ? {} : { shouldStop }) });
    // Translation and set-up count too.
    this.work += answer.work + problem.tasks.length * 10;
    onProgress?.(Math.min(1, this.work / effort));
    if (answer.kind !== 'unknown') this.#known.set(key, answer.kind);
    return answer.kind;
  }
}
