/** The `Host` carried out, from a library of documents, a folder to save in, and a solver. */
import type { Host } from '../api.ts';
import type { Library } from '../documents/library.ts';
import type { SolverClient } from '../solving/solver-client.ts';
import { helping } from './helping.ts';
import { planning } from './planning.ts';
import { reckonKitchen } from './reckon-kitchen.ts';
import { reckonPlan } from './reckon-plan.ts';
import { saveKitchen } from './save-kitchen.ts';
import { savePlan } from './save-plan.ts';

export interface HostParts {
  readonly library: Library;
  /** Folder that plans and kitchens are saved in. */
  readonly folder: string;
  readonly solver: SolverClient;
}

/** A host over its parts; whoever made the solver closes it. */
export function createHost({ library, folder, solver }: HostParts): Host {
  return {
    list: library.list,
    session: (id) => library.find('session', id),
    kitchen: (id) => library.find('kitchen', id),
    plan: (id) => library.find('plan', id),
    savePlan: (plan) => savePlan(plan, folder),
    saveKitchen: (kitchen) => saveKitchen(kitchen, folder),
    kitchenFigures: (kitchen) => Promise.resolve(reckonKitchen(kitchen)),
    planFigures: (plan) => Promise.resolve(reckonPlan(plan)),
    startPlan: planning(library, solver),
    startHelp: helping(library, solver),
  };
}
