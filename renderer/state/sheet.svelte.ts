/** How one plan's sheet is looked at: lanes or running order, how close, which bar, with the binding chain or without. */
import type { Plan } from '../../solver/kitchen/plan.ts';
import { wholeView } from '../chart/layout/chart-layout.ts';
import { ChoiceState } from './choice.svelte.ts';
import { ViewState } from './view.svelte.ts';

/** Minutes that a phone shows at first: as much as can be read, not everything. */
const FIRST_NARROW = 50;

export class SheetState {
  readonly view = new ViewState();
  readonly choice = new ChoiceState();
  show = $state<'chart' | 'order'>('chart');
  /** The binding chain is marked and listed. */
  why = $state(false);

  open(plan: Plan, narrow: boolean): void {
    this.view.open(wholeView(plan), narrow ? FIRST_NARROW : undefined);
    this.choice.reset();
  }

  /** A better plan of the same request: how it is looked at stays. */
  renew(plan: Plan): void {
    this.view.renew(wholeView(plan));
  }
}
