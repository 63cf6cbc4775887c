import { beforeEach, describe, expect, test } from 'vitest';
import type { PlanResult } from '../../../app/api.ts';
import { createLibrary } from '../../../app/documents/library.ts';
import { documentText } from '../../../app/documents/write-document.ts';
import { planning } from '../../../app/host/planning.ts';
import { readPlanRequest } from '../../../app/host/plan-request.ts';
import { component, on, session as sessionOf, smallKitchen, step } from '../../support/documents.ts';
import { heldSolver, resultOf, type HeldSolver } from '../../support/solvers.ts';
import { supper } from '../../support/supper.ts';

const roots = component('roots', [step('peel', [on(5)])]);
let texts: Record<string, string>;
let solver: HeldSolver;
let startPlan: ReturnType<typeof planning>;

beforeEach(() => {
  texts = {
    'test.session.json': documentText(sessionOf([roots])),
    'small.kitchen.json': documentText(smallKitchen()),
    'large.kitchen.json': documentText(smallKitchen({ id: 'large' })),
    'roots.component.json': documentText(roots),
  };
  solver = heldSolver();
  const texter = () => Promise.resolve(Object.entries(texts).map(([file, text]) => ({ file, text })));
  startPlan = planning(createLibrary([{ demo: false, texts: texter }]), solver);
});

const planned: PlanResult = { kind: 'planned', plan: supper, solveMs: 10, firstPlanMs: 5 };
/** Lets everything that is due happen. */
const settle = () => new Promise((resolve) => setImmediate(resolve));
/** Starts a request, answers it from the solver if it gets there, and gives the result. */
async function ask(request: Parameters<typeof startPlan>[0], answer: PlanResult): Promise<PlanResult> {
  const before = solver.asked.length;
  const result = resultOf((events) => startPlan(request, events));
  await settle();
  solver.asked[before]?.events.onDone(answer);
  return result;
}

describe('planning on request', () => {
  test('hands the solver the documents, and what was asked for', async () => {
    await ask({ session: 'test', kitchen: 'large', intent: 'calmest', seed: 7, effort: 5000 }, planned);
    expect(solver.asked[0]!.job).toMatchObject({
      session: { id: 'test' },
      kitchen: { id: 'large' },
      components: [{ id: 'roots' }],
      intent: 'calmest',
      seed: 7,
      effort: 5000,
    });
  });

  test('answers the same request from memory', async () => {
    await ask({ session: 'test' }, planned);
    expect(await ask({ session: 'test' }, planned)).toBe(planned);
    expect(solver.asked).toHaveLength(1);
  });

  test('asks again once a document has changed', async () => {
    await ask({ session: 'test' }, planned);
    texts['roots.component.json'] = documentText({ ...roots, name: 'other roots' });
    await ask({ session: 'test' }, planned);
    expect(solver.asked).toHaveLength(2);
  });

  test('asks again after an answer that depended on the moment', async () => {
    await ask({ session: 'test' }, { kind: 'unknown', reason: 'the solver was closed' });
    await ask({ session: 'test' }, planned);
    expect(solver.asked).toHaveLength(2);
  });

  test('does not remember a plan that was stopped', async () => {
    const first = resultOf((events) => {
      const { stop } = startPlan({ session: 'test' }, events);
      setImmediate(() => {
        stop();
        solver.asked[0]!.events.onDone(planned);
      });
    });
    await first;
    expect(solver.asked[0]!.stopped).toBe(true);
    await ask({ session: 'test' }, planned);
    expect(solver.asked).toHaveLength(2);
  });

  test('stopped before the documents are there, it never reaches the solver', async () => {
    const result = await resultOf((events) => startPlan({ session: 'test' }, events).stop());
    expect(result).toEqual({ kind: 'unknown', reason: 'stopped before a plan was found' });
    expect(solver.asked).toHaveLength(0);
  });

  test('refuses a session that is not there, or that names what is not there', async () => {
    expect(await ask({ session: 'none' }, planned)).toMatchObject({
      kind: 'refused',
      faults: [{ document: 'session none' }],
    });
    expect(await ask({ session: 'test', kitchen: 'none' }, planned)).toMatchObject({
      kind: 'refused',
      faults: [{ document: 'kitchen none' }],
    });
    delete texts['roots.component.json'];
    expect(await ask({ session: 'test' }, planned)).toMatchObject({
      kind: 'refused',
      faults: [{ path: 'dishes[0].component' }],
    });
  });
});

describe('a request from outside', () => {
  test('is taken with its options', () => {
    const request = { session: 'test', crew: 'one', effort: 1000, seed: 3 };
    expect(readPlanRequest(request)).toEqual({ ok: true, value: request });
  });

  test.each([
    ['nothing', null],
    ['no session', {}],
    ['a session that is a path', { session: '../../etc/passwd' }],
    ['a seed that is no number', { session: 'a', seed: 'x' }],
    ['an effort without end', { session: 'a', effort: Infinity }],
    ['a key too many', { session: 'a', file: '/etc/passwd' }],
  ])('is refused with %s', (_name, request) => {
    expect(readPlanRequest(request).ok).toBe(false);
  });
});
