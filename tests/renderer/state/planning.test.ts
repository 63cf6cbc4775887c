import { describe, expect, test } from 'vitest';
import { PlanningState } from '../../../renderer/state/planning.svelte.ts';
import { SettingsState } from '../../../renderer/state/settings.svelte.ts';
import { standInHost } from '../../support/stand-in-host.ts';
import { supper } from '../../support/supper.ts';

const planned = { kind: 'planned', plan: supper, solveMs: 5, firstPlanMs: 1 } as const;

describe('planning', () => {
  test('goes from progress to a plan', () => {
    const host = standInHost();
    const planning = new PlanningState(host);
    planning.start({ session: 'supper' });
    expect(planning.planning).toEqual({ kind: 'running', progress: null, stopping: false });
    host.jobs[0]!.events.onProgress({ value: 70, bound: 60, share: 0.5 });
    expect(planning.planning).toMatchObject({ kind: 'running', progress: { value: 70, bound: 60 } });
    host.jobs[0]!.events.onDone(planned);
    expect(planning.plan).toEqual(supper);
    expect(planning.stale).toBe(false);
  });

  test('keeps the last plan in sight while the next is made', () => {
    const host = standInHost();
    const planning = new PlanningState(host);
    planning.showPlan(supper, { session: 'supper' });
    planning.start({ session: 'supper', intent: 'calmest' });
    expect([planning.plan === supper, planning.stale]).toEqual([true, true]);
  });

  test('takes a plan of another session out of sight', () => {
    const planning = new PlanningState(standInHost());
    planning.showPlan(supper, { session: 'supper' });
    planning.start({ session: 'dinner' });
    expect(planning.plan).toBeNull();
  });

  test('stops the job that it leaves, and no longer hears it', () => {
    const host = standInHost();
    const planning = new PlanningState(host);
    planning.start({ session: 'supper' });
    planning.start({ session: 'supper', intent: 'calmest' });
    expect(host.jobs[0]!.stopped).toBe(true);
    host.jobs[0]!.events.onDone(planned);
    expect(planning.planning.kind).toBe('running');
  });

  test('takes a plan that failed its check out of sight', () => {
    const host = standInHost();
    const planning = new PlanningState(host);
    planning.showPlan(supper, { session: 'supper' });
    planning.start({ session: 'supper' });
    host.jobs[0]!.events.onDone({ kind: 'failed-check', violations: ['the rack is overfilled'] });
    expect(planning.plan).toBeNull();
    expect(planning.planning).toMatchObject({ kind: 'done', result: { kind: 'failed-check' } });
  });

  test('asks once to stop and says so', () => {
    const host = standInHost();
    const planning = new PlanningState(host);
    planning.start({ session: 'supper' });
    planning.stop();
    expect(host.jobs[0]!.stopped).toBe(true);
    expect(planning.planning).toMatchObject({ stopping: true });
  });

  const draft = { ...supper, finishMinutes: 70 };
  const progress = { value: 70, bound: 60, share: 0.5 };

  test('draws the first plan at once and each better one after it, as the best so far', () => {
    const host = standInHost();
    const planning = new PlanningState(host);
    planning.start({ session: 'supper' });
    const { onProgress, onDone } = host.jobs[0]!.events;
    onProgress({ ...progress, plan: draft });
    expect([planning.plan, planning.bestSoFar, planning.stale]).toEqual([draft, true, false]);
    onProgress({ ...progress, bound: 65 });
    expect(planning.plan).toBe(draft);
    onProgress({ ...progress, value: 66, plan: supper });
    expect([planning.plan, planning.bestSoFar]).toEqual([supper, true]);
    onDone(planned);
    expect([planning.plan, planning.bestSoFar]).toEqual([supper, false]);
  });

  test('a better plan is the same one to look at; that of another request is another', () => {
    const host = standInHost();
    const planning = new PlanningState(host);
    planning.start({ session: 'supper' });
    const before = planning.opened;
    host.jobs[0]!.events.onProgress({ ...progress, plan: draft });
    const first = planning.opened;
    host.jobs[0]!.events.onProgress({ ...progress, plan: supper });
    host.jobs[0]!.events.onDone(planned);
    expect([planning.opened, first === before]).toEqual([first, false]);
    planning.start({ session: 'supper', intent: 'calmest' });
    expect([planning.opened, planning.stale]).toEqual([first, true]);
    host.jobs[1]!.events.onProgress({ ...progress, plan: draft });
    expect([planning.opened === first, planning.stale]).toEqual([false, false]);
  });

  test('stopped, it keeps what was in sight until the answer comes', () => {
    const host = standInHost();
    const planning = new PlanningState(host);
    planning.start({ session: 'supper' });
    const { onProgress, onDone } = host.jobs[0]!.events;
    onProgress({ ...progress, plan: draft });
    planning.stop();
    onProgress({ ...progress, plan: supper });
    expect(planning.plan).toBe(draft);
    onDone({ ...planned, plan: { ...draft, stopped: true } });
    expect(planning.plan).toMatchObject({ finishMinutes: 70, stopped: true });
  });

  test('a job that was replaced is not heard, though it was asked the very same', () => {
    const host = standInHost();
    const planning = new PlanningState(host);
    const request = { session: 'supper' };
    planning.start(request);
    planning.start(request);
    host.jobs[0]!.events.onProgress({ ...progress, plan: draft });
    host.jobs[0]!.events.onDone({ kind: 'unknown', reason: 'stopped before a plan was found' });
    expect([planning.plan, planning.planning.kind]).toEqual([null, 'running']);
    host.jobs[1]!.events.onProgress({ ...progress, plan: supper });
    expect(planning.plan).toBe(supper);
  });

  test('what comes after the answer is not heard', () => {
    const host = standInHost();
    const planning = new PlanningState(host);
    planning.start({ session: 'supper' });
    const { onProgress, onDone } = host.jobs[0]!.events;
    onDone(planned);
    onProgress({ ...progress, plan: draft });
    onDone({ kind: 'unknown', reason: 'late' });
    expect([planning.plan, planning.planning]).toEqual([supper, { kind: 'done', result: planned }]);
  });

  test.each([
    { kind: 'a solver that fails', drawn: true },
    { kind: 'a solver that fails before its first plan', drawn: false },
  ])('$kind leaves in sight what was found, and no plan of another request', ({ drawn }) => {
    const host = standInHost();
    const planning = new PlanningState(host);
    planning.showPlan(supper, { session: 'supper' });
    planning.start({ session: 'supper', intent: 'calmest' });
    if (drawn) host.jobs[0]!.events.onProgress({ ...progress, plan: draft });
    host.jobs[0]!.events.onDone({ kind: 'unknown', reason: 'the solver failed: out of salt' });
    expect(planning.plan).toBe(drawn ? draft : null);
    expect(planning.planning).toMatchObject({ kind: 'done', result: { kind: 'unknown' } });
  });

  test('counts the time from the asking on', () => {
    let now = 100;
    const planning = new PlanningState(standInHost(), () => now);
    planning.start({ session: 'supper' });
    now = 4100;
    expect(planning.elapsedMs()).toBe(4000);
  });

  test('a host that cannot be reached is said in words', () => {
    const planning = new PlanningState({
      ...standInHost(),
      startPlan: () => {
        throw new Error('no worker');
      },
    });
    planning.start({ session: 'supper' });
    expect(planning.planning).toEqual({ kind: 'broken', words: 'no worker' });
  });
});

describe('settings', () => {
  const keeper = (kept: string | null) => {
    let value = kept;
    return { getItem: () => value, setItem: (_key: string, next: string) => (value = next) };
  };

  test('are kept and read again', () => {
    const place = keeper(null);
    const first = new SettingsState(place);
    first.theme = 'dark';
    first.reading = 'far';
    first.everything = true;
    const second = new SettingsState(place);
    expect([second.theme, second.reading, second.everything]).toEqual(['dark', 'far', true]);
  });

  test.each(['', 'not json', '{"theme":"purple","reading":7}'])(
    'nonsense (%s) is read as the first settings',
    (kept) => {
      const settings = new SettingsState(keeper(kept));
      expect([settings.theme, settings.reading, settings.everything]).toEqual(['system', 'near', false]);
    },
  );

  test('work where nothing can be kept', () => {
    const settings = new SettingsState({
      getItem: () => null,
      setItem: () => {
        throw new Error('no room');
      },
    });
    settings.theme = 'light';
    expect(settings.theme).toBe('light');
  });
});
