/**
 * Host: everything a renderer may ask, in one typed interface. Carried out in `app/host/`, reached through the web host or the
 * desktop shell; the renderer never knows which. Answers that can be "no" are values, never thrown.
 */
import type { KitchenFigures } from '../solver/answers/kitchen-figures.ts';
import type { PlanFigures } from '../solver/answers/plan-figures.ts';
import type { RequirementWords } from '../solver/answers/requirement.ts';
import type { HelpReport } from '../solver/answers/what-would-help.ts';
import type { HowSure } from '../solver/answers/how-sure.ts';
import type { Kitchen } from '../solver/kitchen/kitchen.ts';
import type { Plan, PlanTier, TierId } from '../solver/kitchen/plan.ts';
import type { Intent, Session } from '../solver/kitchen/session.ts';

/** A fault in what was given: where, what was found, what is wanted, and the mend. */
export interface Fault {
  /** File name or title of the document. */
  readonly document: string;
  /** Place in it, such as `steps[3].needs[0].leastC`; empty for the document as a whole. */
  readonly path: string;
  readonly found: string;
  readonly wanted: string;
  readonly mend: string;
}

export type Answer<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly faults: readonly Fault[] };

export interface DocumentEntry {
  readonly kind: 'kitchen' | 'component' | 'session' | 'plan' | 'safety-rules';
  readonly id: string;
  readonly name: string;
  /** File name within the data folder, or `demo/…` for the documents that come with the program. */
  readonly file: string;
  readonly demo: boolean;
  /** Faults that keep it from being used; empty when it is sound. */
  readonly faults: readonly Fault[];
}

export interface PlanRequest {
  readonly session: string;
  readonly kitchen?: string;
  readonly crew?: string;
  readonly intent?: Intent;
  /** Id of the safety rules that hold; default: the session's, else the strictest of the built-in ones. */
  readonly authority?: string;
  /** Work units; default: a few seconds' worth. */
  readonly effort?: number;
  readonly seed?: number;
}

export interface PlanProgress {
  /** Best first-tier value so far, minutes; null before the first plan. */
  readonly value: number | null;
  readonly bound: number;
  /** 0–1 of the effort spent. */
  readonly share: number;
  /** The tier that is being proven, once there is a plan; absent when all are settled. */
  readonly tier?: TierId;
  /** What is known of each tier of the best plan, most important first. */
  readonly tiers?: readonly PlanTier[];
  /**
   * The best plan so far, as it would be kept if planning stopped now; it passed the checker. Only with the progress that brings a better
   * one, a few times a second at most.
   */
  readonly plan?: Plan;
}

/** What clashes where there can be no plan, in the user's own requirements. */
export interface Clash {
  /** They clash together. Empty: the steps as written clash by themselves. */
  readonly members: readonly RequirementWords[];
  /** Any fewer of them can be kept together; false: that could not all be shown in the effort given. */
  readonly minimal: boolean;
  /** Each alone, given up, makes a plan possible. */
  readonly singles: readonly RequirementWords[];
  /** Where no single one is enough: some that together, given up, make a plan possible. */
  readonly together: readonly RequirementWords[];
}

/** How planning ended. `violations` of the checker are sentences; a plan with any is never shown as sound. */
export type PlanResult =
  | {
      readonly kind: 'planned';
      readonly plan: Plan;
      readonly solveMs: number;
      readonly firstPlanMs: number;
      /** The chances of its finish when work takes longer or less; absent where planning was stopped before they were known. */
      readonly sure?: HowSure;
    }
  | {
      readonly kind: 'impossible';
      readonly reason: string;
      readonly requirements: readonly string[];
      readonly clash?: Clash;
    }
  | { readonly kind: 'unknown'; readonly reason: string }
  | { readonly kind: 'refused'; readonly faults: readonly Fault[] }
  | { readonly kind: 'failed-check'; readonly violations: readonly string[] };

export interface JobEvents {
  readonly onProgress: (progress: PlanProgress) => void;
  readonly onDone: (result: PlanResult) => void;
}

/** How far the question what would help is answered. */
export interface HelpProgress {
  /** 0–1 of the effort spent. */
  readonly share: number;
  readonly report: HelpReport;
}

export type HelpResult =
  | { readonly kind: 'answered'; readonly report: HelpReport }
  /** There is no plan that anything could make shorter. */
  | { readonly kind: 'impossible'; readonly reason: string }
  | { readonly kind: 'unknown'; readonly reason: string }
  | { readonly kind: 'refused'; readonly faults: readonly Fault[] };

export interface HelpEvents {
  readonly onProgress: (progress: HelpProgress) => void;
  readonly onDone: (result: HelpResult) => void;
}

export interface Host {
  readonly list: () => Promise<readonly DocumentEntry[]>;
  readonly session: (id: string) => Promise<Answer<Session>>;
  readonly kitchen: (id: string) => Promise<Answer<Kitchen>>;
  readonly plan: (id: string) => Promise<Answer<Plan>>;
  readonly savePlan: (plan: Plan) => Promise<Answer<DocumentEntry>>;
  readonly saveKitchen: (kitchen: Kitchen) => Promise<Answer<DocumentEntry>>;
  /** Reckons a kitchen, saved or not: what its ovens, burners and pans can do, each number with its working. */
  readonly kitchenFigures: (kitchen: Kitchen) => Promise<Answer<KitchenFigures>>;
  /** Reckons a plan: what it takes of energy, water and money, and what is in its boxes. */
  readonly planFigures: (plan: Plan) => Promise<Answer<PlanFigures>>;
  /**
   * Plans a session in a worker; a request already planned with the same documents is answered from memory.
   * @returns how to stop it: the best plan so far then comes as the result, flagged `stopped`
   */
  readonly startPlan: (request: PlanRequest, events: JobEvents) => { readonly stop: () => void };
  /**
   * Asks what would help: how many minutes one more of each thing would gain, and five minutes off each step. The intent of the
   * request does not matter, for minutes do.
   * @returns how to stop it: what is known by then comes as the result
   */
  readonly startHelp: (request: PlanRequest, events: HelpEvents) => { readonly stop: () => void };
}
