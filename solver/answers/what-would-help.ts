/**
 * What would help: how many minutes one more hand, rack, burner, oven, pan… would gain, and five minutes off each step.
 *
 * Every help only allows more, so the best plan without it is a plan with it, and the one question left is whether there is a
 * shorter one. For the same reason a proof that several helps together gain nothing is a proof for each of them: they are asked
 * about in groups, which are halved only where they do gain. A group's bound is a bound for each of its members. Shorter steps are
 * asked about of one learner, whose proofs tell which of them they do not depend on.
 */
import type { Solution } from '../engine/outcome.ts';
import type { Problem } from '../engine/problem.ts';
import { solveTogether } from '../engine/together.ts';
import type { InputFault } from '../kitchen/fault.ts';
import type { Translated } from '../translate/legend.ts';
import { sessionToProblem, type SessionInput } from '../translate/session-to-problem.ts';
import { carriedOver } from './carry-over.ts';
import { cheapness, helpWords, type Help, type HelpWords } from './help.ts';
import { groupsOf } from './help-groups.ts';
import { kitchenHelps } from './kitchen-helps.ts';
import { LengthQuestions, type LengthAnswer } from './length-questions.ts';
import { LEARNER_UNITS } from '../engine/learning/learner.ts';
import { setUpWork, shorter } from './shorter.ts';
import { stepHelps } from './step-helps.ts';

/** Minutes from the start of the session: when the last work ends, or before a table time when the first begins. */
export interface HelpAnswer {
  readonly help: HelpWords;
  /** Best finish (or minutes before the table) found with the help. */
  readonly finish: number;
  /** Minutes sooner (or later begun) than without it, ≥ 0. */
  readonly gain: number;
  /** The gain is never more than this. */
  readonly mostGain: number;
  /** `gain` is `mostGain`. */
  readonly proven: boolean;
}

export interface HelpReport {
  /** Where there is a table time, the gain is how much later work may begin. */
  readonly measure: 'finish' | 'latest-start';
  /** Without any help: minutes, and the least that they could be. */
  readonly finish: number;
  readonly bound: number;
  /** Most gained first, then most that may be gained, then what is cheapest for a cook. */
  readonly answers: readonly HelpAnswer[];
  /** Helps about which nothing is known yet; they are not among the answers. */
  readonly open: number;
  readonly stopped: boolean;
  readonly work: number;
}

export type WhatWouldHelp =
  | ({ readonly kind: 'answered' } & HelpReport)
  | { readonly kind: 'impossible' }
  | { readonly kind: 'unknown' }
  | { readonly kind: 'refused'; readonly faults: readonly InputFault[] };

export interface WhatWouldHelpOptions {
  readonly seed: number;
  /** Most work units in all. */
  readonly effort: number;
  /** Most work units for one question when it is first asked; default by what the same question takes without any help. What is left undecided is asked again with what remains. */
  readonly questionEffort?: number;
  readonly shouldStop?: () => boolean;
  /** Called after each question; the report is as far as it is known. */
  readonly onProgress?: (share: number, report: HelpReport) => void;
}

/** Share of the effort for the plan without help. */
const BASE_SHARE = 0.3;
/** Least and most share of it for one question when it is first asked. */
const QUESTION_SHARE = { least: 1 / 160, most: 1 / 20 } as const;
/** With a help it may take this many times the work that it takes without. */
const PATIENCE = 3;
/** Asked again, a question may take this many times what it took at first, and more where little else is open. */
const AGAIN = 4;

/** Asks about every help for a session. Same input, seed and effort give the same answer. */
export function whatWouldHelp(input: SessionInput, options: WhatWouldHelpOptions): WhatWouldHelp {
  const soonest: SessionInput = { ...input, intent: 'soonest' };
  const translated = sessionToProblem(soonest);
  if (!translated.ok) return { kind: 'refused', faults: translated.faults };
  const problem = firstTier(translated.problem);
  const { seed, effort, shouldStop } = options;
  const outcome = solveTogether(problem, {
    seed,
    effort: effort * BASE_SHARE,
    ...(shouldStop === undefined ? {} : { shouldStop }),
  });
  if (outcome.kind === 'impossible' || outcome.kind === 'unknown') return { kind: outcome.kind };
  const { value, bound } = outcome.tiers[0]!;
  const asking = new Asking(soonest, translated, { solution: outcome.solution, value, bound }, options, outcome.work);
  asking.run();
  return { kind: 'answered', ...asking.report() };
}

const firstTier = (problem: Problem): Problem => ({ ...problem, tiers: problem.tiers.slice(0, 1) });

interface Known {
  /** Best value found with this help among others, and a bound. */
  readonly value: number;
  readonly bound: number;
  /** The plan of that value; null: none better than without the help. */
  readonly plan: Better | null;
}

interface Group {
  readonly helps: readonly Help[];
  /** A plan with these helps that is known to be better than the one without. */
  readonly better: Better | null;
}
interface Better {
  readonly problem: Problem;
  readonly solution: Solution;
}

class Asking {
  readonly #helps: readonly Help[];
  readonly #known = new Map<Help, Known>();
  readonly #problem: Problem;
  #stopped = false;

  constructor(
    private readonly input: SessionInput,
    private readonly translated: Translated,
    private base: { readonly solution: Solution; readonly value: number; readonly bound: number },
    private readonly options: WhatWouldHelpOptions,
    private work: number,
  ) {
    this.#problem = firstTier(translated.problem);
    this.#helps = [...kitchenHelps(input), ...stepHelps(translated.translation)];
  }

  run(): void {
    this.#gauge();
    const inOrder = groupsOf(this.#helps, this.translated, this.base.solution);
    for (const kind of ['by-itself', 'by-hand'] as const)
      this.#askLengths(inOrder.flat().filter((help) => help.kind === kind));
    const queue: Group[] = inOrder
      .map((helps) => ({ helps: helps.filter((help) => !this.#isSettled(help)), better: null }))
      .filter(({ helps }) => helps.length > 0);
    // What a group could not settle is asked about one by one when all else is done.
    const later: Group[] = [];
    for (;;) {
      const group = queue.shift() ?? later.shift();
      if (group === undefined || this.#over()) break;
      const { halves, undecided } = this.#ask(group);
      queue.unshift(...halves);
      later.push(...undecided);
      this.#tell();
    }
    const open = this.#helps.filter((help) => this.#isOpen(help));
    open.forEach((help, index) => {
      if (this.#over() || !this.#isOpen(help)) return;
      this.#askAgain(help, open.length - index);
      this.#tell();
    });
  }

  /** Asks one learner about shorter steps of one kind. What it does not settle is asked about as all else is. */
  #askLengths(helps: readonly Help[]): void {
    if (helps.length === 0 || this.#over()) return;
    const { translation } = this.translated;
    const questions = new LengthQuestions(
      this.#problem,
      helps.map((help) => ({ name: help.id, open: (problem) => help.relaxProblem!(problem, translation) })),
    );
    this.work += setUpWork(questions.problem);
    const start = carriedOver(this.#problem, this.base.solution, questions.problem);
    if (!questions.ready || start === null) return;
    questions.guideBy(start);
    const ask = (open: readonly Help[]): LengthAnswer => {
      const work = Math.max(0, Math.min(this.#quick, this.options.effort - this.work)) * LEARNER_UNITS;
      const names = open.map(({ id }) => id);
      const answer = questions.ask(names, this.base.value, work, this.options.shouldStop);
      this.work += Math.ceil(answer.work / LEARNER_UNITS);
      return answer;
    };
    const without = ask([]);
    if (without.solution !== null) this.#improveBase(questions.problem, without.solution, without.value);
    // Too hard for it even without help.
    if (!without.proven || without.value !== this.base.value) return;
    this.base = { ...this.base, bound: this.base.value };
    for (const help of helps) if (without.idle.includes(help.id)) this.#learn(help, Infinity, this.base.value, null);
    this.#tell();
    for (const help of helps) {
      if (this.#isSettled(help)) continue;
      if (this.#over()) return;
      const { solution, value, proven, idle } = ask([help]);
      const problem = this.#with([help])!;
      const plan = solution === null ? null : carriedOver(questions.problem, solution, problem);
      if (solution !== null && plan === null) throw new Error(`a plan with ${help.id} is none of its problem`);
      this.#learn(help, value, proven ? value : 0, plan === null ? null : { problem, solution: plan });
      // Nothing gained, and closed or open is all the same to the proof.
      if (proven && value === this.base.value)
        for (const other of helps) if (idle.includes(other.id)) this.#learn(other, Infinity, this.base.value, null);
      this.#tell();
    }
  }

  /** Its gain is known, by proof. */
  #isSettled(help: Help): boolean {
    const known = this.#known.get(help);
    return known !== undefined && known.bound >= Math.min(known.value, this.base.value);
  }

  #tell(): void {
    this.options.onProgress?.(Math.min(1, this.work / this.options.effort), this.report());
  }

  /** Asked about, but not settled. */
  #isOpen(help: Help): boolean {
    return this.#known.has(help) && !this.#isSettled(help);
  }

  /** At most for one question at first. */
  #quick = 0;

  /** Asks without any help, to know what an answer takes. */
  #gauge(): void {
    const { seed, effort, questionEffort, shouldStop } = this.options;
    const most = Math.min(effort * QUESTION_SHARE.most, effort - this.work);
    this.#quick = questionEffort ?? effort * QUESTION_SHARE.least;
    if (questionEffort !== undefined || this.#over()) return;
    const { solution, value, bound, work } = shorter(this.#problem, this.base.solution, {
      seed,
      effort: most,
      ...(shouldStop === undefined ? {} : { shouldStop }),
    });
    this.work += work;
    if (solution !== null) this.base = { solution, value, bound: Math.max(bound, this.base.bound) };
    if (bound === value) this.#quick = Math.max(this.#quick, Math.min(PATIENCE * work, most));
  }

  /** @param among so many questions what is left of the effort is to be shared */
  #askAgain(help: Help, among: number): void {
    const problem = this.#with([help]);
    if (problem === null) return;
    const plan = this.#known.get(help)?.plan ?? null;
    const start =
      plan === null
        ? carriedOver(this.#problem, this.base.solution, problem)
        : carriedOver(plan.problem, plan.solution, problem);
    const { seed, effort, shouldStop } = this.options;
    const left = effort - this.work;
    const outcome = solveTogether(problem, {
      seed,
      effort: Math.min(left, Math.max(AGAIN * this.#quick, left / among)),
      ...(shouldStop === undefined ? {} : { shouldStop }),
      ...(start === null ? {} : { start }),
    });
    this.work += outcome.work + setUpWork(problem);
    if (!('solution' in outcome)) return;
    const { value, bound } = outcome.tiers[0]!;
    this.#improveBase(problem, outcome.solution, value);
    this.#learn(help, value, bound, { problem, solution: outcome.solution });
  }

  #over(): boolean {
    this.#stopped ||= this.options.shouldStop?.() === true || this.work >= this.options.effort;
    return this.#stopped;
  }

  #ask({ helps, better }: Group): { readonly halves: readonly Group[]; readonly undecided: readonly Group[] } {
    const single = helps.length === 1;
    const nothing = { halves: [], undecided: [] };
    const problem = this.#with(helps);
    // A help that cannot be had changes nothing that could be asked about.
    if (problem === null) return nothing;
    const known = better === null ? null : carriedOver(better.problem, better.solution, problem);
    if (known !== null && !single) return { halves: halvesOf(helps, { problem, solution: known }), undecided: [] };
    const start = known ?? carriedOver(this.#problem, this.base.solution, problem);
    const { seed, effort, shouldStop } = this.options;
    const answer = shorter(problem, start, {
      seed,
      effort: Math.min(this.#quick, effort - this.work),
      anyBetter: !single,
      ...(shouldStop === undefined ? {} : { shouldStop }),
    });
    this.work += answer.work;
    const { solution } = answer;
    if (solution !== null) this.#improveBase(problem, solution, answer.value);
    const plan = single && solution !== null ? { problem, solution } : null;
    for (const help of helps) this.#learn(help, plan === null ? Infinity : answer.value, answer.bound, plan);
    if (single || answer.bound >= this.base.value) return nothing;
    if (solution !== null && answer.value < this.base.value)
      return { halves: halvesOf(helps, { problem, solution }), undecided: [] };
    return { halves: [], undecided: helps.map((help) => ({ helps: [help], better: null })) };
  }

  /** A plan that is better without the help that it was looked for with. */
  #improveBase(problem: Problem, solution: Solution, value: number): void {
    if (value >= this.base.value) return;
    const without = carriedOver(problem, solution, this.#problem);
    if (without !== null) this.base = { ...this.base, solution: without, value };
  }

  #learn(help: Help, value: number, bound: number, plan: Better | null): void {
    const known = this.#known.get(help);
    const isBetter = known === undefined || value < known.value;
    this.#known.set(help, {
      value: isBetter ? value : known.value,
      bound: Math.max(bound, known?.bound ?? 0),
      plan: isBetter ? plan : known.plan,
    });
  }

  #with(helps: readonly Help[]): Problem | null {
    const input = helps.reduce((given, { relaxInput }) => relaxInput?.(given) ?? given, this.input);
    let translated: Translated = this.translated;
    if (input !== this.input) {
      const answer = sessionToProblem(input);
      if (!answer.ok) return null;
      translated = answer;
    }
    const { translation } = translated;
    return firstTier(
      helps.reduce((problem, { relaxProblem }) => relaxProblem?.(problem, translation) ?? problem, translated.problem),
    );
  }

  report(): HelpReport {
    const { value, bound } = this.base;
    const answers = [...this.#known].map(([help, known]): HelpAnswer => {
      const finish = Math.min(known.value, value);
      const least = Math.min(known.bound, finish);
      return {
        help: helpWords(help),
        finish,
        gain: value - finish,
        mostGain: value - least,
        proven: least === finish,
      };
    });
    answers.sort(
      (a, b) =>
        b.gain - a.gain ||
        b.mostGain - a.mostGain ||
        cheapness(a.help) - cheapness(b.help) ||
        (a.help.id < b.help.id ? -1 : 1),
    );
    return {
      measure: this.#problem.tiers[0]!.id === 'latest-start' ? 'latest-start' : 'finish',
      finish: value,
      bound: Math.min(bound, value),
      answers,
      open: this.#helps.length - answers.length,
      stopped: this.#stopped,
      work: this.work,
    };
  }
}

function halvesOf(helps: readonly Help[], better: Better): readonly Group[] {
  const half = helps.length >> 1;
  return [helps.slice(0, half), helps.slice(half)].map((some) => ({ helps: some, better }));
}
