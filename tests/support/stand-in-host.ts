/** A host with one of each document, whose jobs the test moves by hand. */
import type { HelpEvents, Host, JobEvents, PlanRequest } from '../../app/api.ts';
import { kitchenFigures } from '../../solver/answers/kitchen-figures.ts';
import { planFigures } from '../../solver/answers/plan-figures.ts';
import { kitchen, session, supper } from './supper.ts';

export interface StandInHost extends Host {
  readonly jobs: { readonly request: PlanRequest; readonly events: JobEvents; stopped: boolean }[];
  readonly helps: { readonly request: PlanRequest; readonly events: HelpEvents; stopped: boolean }[];
  readonly saved: unknown[];
}

const missing = (kind: string, id: string) =>
  Promise.resolve({
    ok: false as const,
    faults: [{ document: `${kind} ${id}`, path: '', found: 'nothing', wanted: `a ${kind}`, mend: 'correct the id' }],
  });
const found = <T>(value: T) => Promise.resolve({ ok: true as const, value });

export function standInHost(): StandInHost {
  const jobs: StandInHost['jobs'] = [];
  const helps: StandInHost['helps'] = [];
  const saved: unknown[] = [];
  const entry = {
    kind: 'plan',
    id: supper.id,
    name: supper.name,
    file: 'x.plan.json',
    demo: false,
    faults: [],
  } as const;
  return {
    jobs,
    helps,
    saved,
    list: () => Promise.resolve([entry]),
    session: (id) => (id === session.id ? found(session) : missing('session', id)),
    kitchen: (id) => (id === kitchen.id ? found(kitchen) : missing('kitchen', id)),
    plan: (id) => (id === supper.id ? found(supper) : missing('plan', id)),
    savePlan: (plan) => {
      saved.push(plan);
      return plan === null ? missing('plan', 'given') : found(entry);
    },
    saveKitchen: (kitchen) => {
      saved.push(kitchen);
      return kitchen === null ? missing('kitchen', 'given') : found({ ...entry, kind: 'kitchen', id: kitchen.id });
    },
    kitchenFigures: (given) => (given === null ? missing('kitchen', 'given') : found(kitchenFigures(given))),
    planFigures: (given) => (given === null ? missing('plan', 'given') : found(planFigures(given, () => '2026-03-08'))),
    startPlan: (request, events) => {
      const job = { request, events, stopped: false };
      jobs.push(job);
      return {
        stop: () => {
          job.stopped = true;
        },
      };
    },
    startHelp: (request, events) => {
      const job = { request, events, stopped: false };
      helps.push(job);
      return {
        stop: () => {
          job.stopped = true;
        },
      };
    },
  };
}
