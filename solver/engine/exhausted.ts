/** Clashes that name nothing: search or bounds alone showed that there is no plan. */
import type { Clash } from './outcome.ts';

const exhausted = (reason: string): Clash => ({ kind: 'exhausted', reason, tasks: [], requirements: [] });

export const RULED_OUT = exhausted('every combination was ruled out');
export const NO_PLACE = exhausted('the bounds of the tasks contradict each other before anything is placed');
