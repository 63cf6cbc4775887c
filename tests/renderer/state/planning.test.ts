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
