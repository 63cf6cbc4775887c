/** What the translation remembers of its tasks and choices, so that a solution can be read back as a plan. */
import type { Literal, Point, Problem } from '../engine/problem.ts';
import type { Kitchen, Oven, OvenFunction } from '../kitchen/kitchen.ts';
import type { Dish, HoldInstance, Part, StepInstance } from '../kitchen/expand.ts';
import type { Component } from '../kitchen/component.ts';
import type { InputFault } from '../kitchen/fault.ts';
import type { PlannedPlace } from '../kitchen/plan.ts';
import type { SafetyRules } from '../kitchen/safety-rules.ts';
import type { Intent, Person, Pool, Session } from '../kitchen/session.ts';
import type { Need } from '../kitchen/step.ts';
import type { AllergenMark } from '../kitchen/values.ts';
import type { ProblemBuilder } from './problem-builder.ts';

/** A thing that a need can be met with. */
export interface PlaceOption {
  /** Resource of the problem. */
  readonly resource: string;
  readonly amount: number;
  /** The place as the plan will name it, without its times. */
  readonly place: Omit<PlannedPlace, 'from' | 'until'>;
}

/** Who may do a piece of work; the choice is null where one person only may. */
export interface WhoOptions {
  readonly choice: string | null;
  readonly people: readonly string[];
}

/** One piece of hands-on work: a part of a step, a check on the way, or a piece of interruptible work. */
export interface Operation {
  readonly task: string;
  readonly who: WhoOptions;
  readonly minutes: number;
  readonly name: string | null;
  readonly probe: boolean;
  readonly check: boolean;
}

/** Ways of a step whose hands-on work is alike share their operations. */
export interface Shape {
  readonly ways: readonly number[];
  readonly parts: readonly Part[];
  /** One a part: the operation of hands-on parts, the checks of hands-off parts. */
  readonly operations: readonly (readonly Operation[])[];
  /** Point between part i−1 and part i, from the start of the step to its end. */
  readonly boundaries: readonly Point[];
}

export interface NeedLegend {
  readonly need: Need;
  /** Numbers of the ways that have it. */
  readonly ways: readonly number[];
  /** Task that holds the place; for a need carried by the operation itself, that operation's task. */
  readonly task: string;
  readonly choice: string | null;
  readonly options: readonly PlaceOption[];
}

export interface StepLegend {
  readonly instance: StepInstance;
  readonly dish: Dish;
  /** Name of its tasks: the instance's id, and the split it belongs to where there are several. */
  readonly key: string;
  /** When it exists: under its split. */
  readonly when: readonly Literal[];
  readonly wayChoice: string | null;
  /** Numbers of the ways that this kitchen can do, in the order of the choice's options. */
  readonly wayOptions: readonly number[];
  readonly shapes: readonly Shape[];
  /** Pieces of interruptible work, first to last; empty: in one go. */
  readonly pieces: readonly Operation[];
  readonly needs: NeedLegend[];
  readonly start: Point & { readonly task: string };
  readonly end: Point & { readonly task: string };
}

export interface HoldLegend {
  readonly instance: HoldInstance;
  readonly when: readonly Literal[];
  readonly task: string;
  readonly choice: string | null;
  readonly options: readonly PlaceOption[];
}

export interface WashLegend {
  readonly task: string;
  /** Option 0 is absent; option i + 1 is done by person i. */
  readonly choice: string;
  readonly people: readonly string[];
  /** The thing washed, or null for hands. */
  readonly place: Omit<PlannedPlace, 'from' | 'until'> | null;
  readonly thing: string;
  readonly number: number;
}

/** One time a pool comes to the boil. `water` tells what its options mean. */
export interface BoilLegend {
  /** The span in which the burner heats it. */
  readonly heat: string;
  /** null for the first, which always is; else options absent, again, fresh. */
  readonly choice: string | null;
  /** First filling; null for later boils. */
  readonly fill: Operation | null;
  /** Back on the heat with the same water; null for the first. */
  readonly again: Operation | null;
  /** Poured away and filled anew; null for the first. */
  readonly fresh: Operation | null;
}

export interface PoolLegend {
  readonly pool: Pool;
  readonly span: string;
  readonly panChoice: string | null;
  readonly pans: readonly string[];
  readonly burnerChoice: string | null;
  readonly burners: readonly string[];
  readonly boils: readonly BoilLegend[];
  readonly empty: Operation;
}

export interface OvenLegend {
  readonly oven: Oven;
  /** The span in which it is switched on. */
  readonly fire: string;
  /** null: always used; else options off, on. */
  readonly choice: string | null;
}

/** A window in which food in an oven wants its temperature, °C, on positions of the dial. */
export interface OvenClass {
  readonly function: OvenFunction;
  readonly leastC: number;
  readonly mostC: number;
}

/** Everything a translation works on. */
/** By component id, allergens that a food has met while it was cooked. */
export type Met = ReadonlyMap<string, ReadonlySet<AllergenMark>>;

export interface Translation {
  readonly session: Session;
  readonly kitchen: Kitchen;
  readonly components: readonly Component[];
  readonly crew: readonly Person[];
  /** The safety rules in force. */
  readonly rules: SafetyRules;
  /** Allergens that dishes carry from now on; absent: none but their own. */
  readonly met?: Met;
  readonly intent: Intent;
  /** Minutes from the session's start to a clock time some days before (negative) or after it. */
  readonly wallOffset: (days: number, clock: string) => number;
  readonly builder: ProblemBuilder;
  readonly steps: StepLegend[];
  readonly holds: HoldLegend[];
  readonly washes: WashLegend[];
  readonly pools: PoolLegend[];
  readonly ovens: OvenLegend[];
  /** By oven id: the windows wanted of it, numbered. */
  readonly ovenClasses: Map<string, OvenClass[]>;
  readonly faults: InputFault[];
}

export interface Translated {
  readonly problem: Problem;
  readonly translation: Translation;
}
