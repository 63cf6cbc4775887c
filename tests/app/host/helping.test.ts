import { beforeEach, describe, expect, test } from 'vitest';
import type { HelpResult } from '../../../app/api.ts';
import { createLibrary } from '../../../app/documents/library.ts';
import { documentText } from '../../../app/documents/write-document.ts';
import { helping } from '../../../app/host/helping.ts';
import { component, on, session as sessionOf, smallKitchen, step } from '../../support/documents.ts';
import { heldSolver, type HeldSolver } from '../../support/solvers.ts';

const roots = component('roots', [step('peel', [on(5)])]);
const answered: HelpResult = {
  kind: 'answered',
  report: { measure: 'finish', finish: 5, bound: 5, answers: [], open: 0, stopped: false, work: 1 },
};
let solver: HeldSolver;
let startHelp: ReturnType<typeof helping>;

beforeEach(() => {
  const texts = {
    'test.session.json': documentText(sessionOf([roots])),
    'small.kitchen.json': documentText(smallKitchen()),
    'roots.component.json': documentText(roots),
  };
  solver = heldSolver();
  const texter = () => Promise.resolve(Object.entries(texts).map(([file, text]) => ({ file, text })));
  startHelp = helping(createLibrary([{ demo: false, texts: texter }]), solver);
});

const settle = () => new Promise((resolve) => setImmediate(resolve));
/** Starts a request; answers it from the solver where it gets there. */
async function ask(session: string, stop = false): Promise<HelpResult> {
  const before = solver.helps.length;
  const result = new Promise<HelpResult>((resolve) => {
    const job = startHelp({ session, seed: 3, effort: 5000 }, { onProgress: () => {}, onDone: resolve });
    if (stop) setImmediate(() => setImmediate(() => job.stop()));
  });
  for (let round = 0; round < 5; round++) await settle();
  solver.helps[before]?.events.onDone(answered);
  return result;
}

describe('what would help, on request', () => {
  test('hands the solver the documents, the seed and the effort', async () => {
    expect(await ask('test')).toBe(answered);
    expect(solver.helps[0]!.job).toMatchObject({
      session: { id: 'test' },
      kitchen: { id: 'small' },
      components: [{ id: 'roots' }],
      seed: 3,
      effort: 5000,
    });
  });

  test('answers the same request from memory', async () => {
    await ask('test');
    expect(await ask('test')).toBe(answered);
    expect(solver.helps).toHaveLength(1);
  });

  test('stopped, it reaches the solver and is not remembered', async () => {
    await ask('test', true);
    expect(solver.helps[0]!.stopped).toBe(true);
    await ask('test');
    expect(solver.helps).toHaveLength(2);
  });

  test('about a session that is not there is refused with the fault', async () => {
    expect(await ask('none')).toMatchObject({ kind: 'refused', faults: [{ found: expect.anything() as unknown }] });
    expect(solver.helps).toHaveLength(0);
  });
});
