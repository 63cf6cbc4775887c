// @vitest-environment happy-dom
import { cleanup, fireEvent, render, screen, within } from '@testing-library/svelte';
import { afterEach, describe, expect, test } from 'vitest';
import type { DocumentEntry, Host, PlanResult } from '../../../app/api.ts';
import App from '../../../renderer/App.svelte';
import type { HelpReport } from '../../../solver/answers/what-would-help.ts';
import type { Plan, PlanTier } from '../../../solver/kitchen/plan.ts';
import { standInHost } from '../../support/stand-in-host.ts';
import { session, supper } from '../../support/supper.ts';

afterEach(cleanup);

const entry = (kind: DocumentEntry['kind'], id: string, name: string): DocumentEntry => ({
  kind,
  id,
  name,
  file: `demo/${id}.${kind}.json`,
  demo: true,
  faults: [],
});
const fault = {
  document: 'torn.session.json',
  path: 'dishes[0]',
  found: 'nothing',
  wanted: 'a dish',
  mend: 'Add one.',
};

function opened(extra: Partial<Host> = {}, entries: readonly DocumentEntry[] = []) {
  const stand = standInHost();
  const listed = [
    entry('session', session.id, session.name),
    entry('kitchen', 'small-kitchen', 'Small kitchen'),
    ...entries,
  ];
  const host: Host = { ...stand, list: () => Promise.resolve(listed), ...extra };
  render(App, { props: { host, now: () => 0, keeper: null, firstSession: 'supper' } });
  return stand;
}
const planned: PlanResult = { kind: 'planned', plan: supper, solveMs: 1, firstPlanMs: 1 };

describe('the first place', () => {
  test('plans the first session and shows it with what is proved and checked', async () => {
    const { jobs } = opened();
    await screen.findByText('Planning…');
    expect(jobs[0]!.request).toEqual({ session: 'supper', kitchen: 'small-kitchen', intent: 'soonest' });
    jobs[0]!.events.onDone(planned);
    expect(await screen.findByRole('group', { name: `Lanes of ${supper.name}` })).toBeTruthy();
    expect(screen.getByText(/Passed the independent check/)).toBeTruthy();
    expect(screen.getAllByText(/A probe thermometer decides/)[0]).toBeTruthy();
  });

  test('shows a finished plan of the session at once, where there is one', async () => {
    const { jobs } = opened(
      {},
      [entry('plan', supper.id, supper.name)].map((each) => ({ ...each, id: 'supper-plan' })),
    );
    // That document is not there after all; the session is planned instead.
    await screen.findByText('Planning…');
    expect(jobs).toHaveLength(1);
    cleanup();
    const plan = { ...supper, id: 'supper-finished' };
    const second = opened({ plan: () => Promise.resolve({ ok: true, value: plan }) }, [
      entry('plan', plan.id, plan.name),
    ]);
    await screen.findByRole('group', { name: `Lanes of ${supper.name}` });
    expect(second.jobs).toHaveLength(0);
  });

  // Invented figures of a search.
  const tiers: readonly PlanTier[] = [
    { id: 'finish', unit: 'min', value: 70, bound: 60, proven: false },
    { id: 'calm', unit: 'changes', value: 9, bound: 0, proven: false },
  ];
  const running = { value: 70, bound: 60, share: 0.25, tier: 'finish', tiers } as const;

  test('draws the best plan so far, tells what is being proven, and keeps the plan when told to stop', async () => {
    const { jobs } = opened();
    await screen.findByText('Planning…');
    expect(screen.getByRole('button', { name: 'Stop' })).toBeTruthy();
    jobs[0]!.events.onProgress({ ...running, plan: { ...supper, tiers: [...tiers] } });
    expect(await screen.findByRole('group', { name: `Lanes of ${supper.name}` })).toBeTruthy();
    expect(screen.getByRole('status').textContent).toBe(
      'Best so far: 1 h 10 min to the finish; at most 10 min better is possible.',
    );
    expect(screen.getByText(/Passed the independent check/)).toBeTruthy();
    const stands = screen.getByRole('list', { name: /What is proven/ });
    expect(stands.textContent).toMatch(/finish being proven.*calm next/s);
    await fireEvent.click(screen.getByRole('button', { name: 'Stop and keep this plan' }));
    expect(jobs[0]!.stopped).toBe(true);
    jobs[0]!.events.onDone({ ...planned, plan: { ...supper, tiers: [...tiers], stopped: true } });
    expect(await screen.findByText(/Within 10 min of the best possible\. More effort may do better\./)).toBeTruthy();
    expect(screen.getByRole('list', { name: /What is proven/ }).textContent).toMatch(
      /finish within 10 min of the best possible.*calm not bounded yet/s,
    );
  });

  test('a better plan leaves the focus, the card and the zoom where they were', async () => {
    const { jobs } = opened();
    await screen.findByText('Planning…');
    const { onProgress, onDone } = jobs[0]!.events;
    onProgress({ ...running, plan: supper });
    const chart = await screen.findByRole('group', { name: `Lanes of ${supper.name}` });
    const [axis] = screen.getAllByRole('slider');
    await fireEvent.keyDown(axis!, { key: 'PageUp' });
    const at = axis!.getAttribute('aria-valuetext');
    const bars = (): SVGElement[] => [...chart.querySelectorAll<SVGElement>('[data-bar^="hands/"]')];
    const held = bars()[1]!;
    const step = held.getAttribute('data-bar')!.replace(/\/\d+$/, '');
    await fireEvent.click(held);
    held.focus();
    expect(document.activeElement).toBe(held);
    // All of it two minutes later: every bar has another id.
    const later = <T extends { start: number; end: number }>(each: T): T => ({
      ...each,
      start: each.start + 2,
      end: each.end + 2,
    });
    const moved: Plan = {
      ...supper,
      steps: supper.steps.map((each) => ({ ...later(each), segments: each.segments.map(later) })),
    };
    onProgress({ ...running, plan: moved });
    await expect.poll(() => document.activeElement?.getAttribute('data-bar')?.replace(/\/\d+$/, '')).toBe(step);
    expect(document.activeElement).not.toBe(held);
    expect(chart.parentElement!.querySelector('.place')).not.toBeNull();
    expect(screen.getAllByRole('slider')[0]!.getAttribute('aria-valuetext')).toBe(at);
    onDone({ ...planned, plan: supper });
    await expect.poll(() => bars().includes(document.activeElement as SVGElement)).toBe(true);
  });

  test('keeps the best plan so far where the search fails on the way, and says so', async () => {
    const { jobs } = opened();
    await screen.findByText('Planning…');
    jobs[0]!.events.onProgress({ ...running, plan: supper });
    await screen.findByRole('group', { name: `Lanes of ${supper.name}` });
    jobs[0]!.events.onDone({ kind: 'unknown', reason: 'the solver failed: out of salt' });
    expect((await screen.findByRole('alert')).textContent).toMatch(/out of salt\. The best plan until then is kept/);
    expect(screen.getByRole('group', { name: `Lanes of ${supper.name}` })).toBeTruthy();
  });

  test('asks what would help, tells gains as they come, and stops with what is known', async () => {
    const { jobs, helps } = opened();
    await screen.findByText('Planning…');
    jobs[0]!.events.onDone(planned);
    const button = await screen.findByRole('button', { name: 'What would help?' });
    expect(button.getAttribute('aria-expanded')).toBe('false');
    await fireEvent.click(button);
    expect(button.getAttribute('aria-expanded')).toBe('true');
    expect(helps[0]!.request).toEqual(jobs[0]!.request);
    const report: HelpReport = {
      measure: 'finish',
      finish: 60,
      bound: 60,
      answers: [
        {
          help: { id: 'board board', kind: 'board', words: 'another board', caution: '' },
          finish: 52,
          gain: 8,
          mostGain: 8,
          proven: true,
        },
        {
          help: { id: 'bowl bowl', kind: 'bowl', words: 'another bowl', caution: '' },
          finish: 60,
          gain: 0,
          mostGain: 0,
          proven: true,
        },
      ],
      open: 3,
      stopped: false,
      work: 1,
    };
    helps[0]!.events.onProgress({ share: 0.5, report });
    expect((await screen.findByRole('status')).textContent).toBe('2 of 5 asked; most so far 8 min by another board');
    await fireEvent.click(screen.getByRole('button', { name: 'Stop with what is known' }));
    expect(helps[0]!.stopped).toBe(true);
    helps[0]!.events.onDone({ kind: 'answered', report });
    const list = await screen.findByRole('list', { name: 'Helps that gain minutes' });
    expect(list.textContent).toMatch(/8 min sooner.*proven.*another board/s);
    expect(screen.getByText('No gain, proven: another bowl')).toBeTruthy();
    expect(screen.getByText(/3 not asked about/)).toBeTruthy();
    await fireEvent.click(button);
    expect(screen.queryByRole('heading', { name: 'What would help?' })).toBeNull();
  });

  test.each<{ name: string; away: () => unknown }>([
    { name: 'Close', away: () => fireEvent.click(screen.getByRole('button', { name: 'Close' })) },
    { name: 'Escape', away: () => fireEvent.keyDown(document.activeElement!, { key: 'Escape' }) },
  ])('$name puts the answer away, and the keyboard goes back to the question', async ({ away }) => {
    const { jobs, helps } = opened();
    await screen.findByText('Planning…');
    jobs[0]!.events.onDone(planned);
    const button = await screen.findByRole('button', { name: 'What would help?' });
    await fireEvent.click(button);
    screen.getByRole('button', { name: 'Close' }).focus();
    await away();
    expect(screen.queryByRole('heading', { name: 'What would help?' })).toBeNull();
    expect(helps[0]!.stopped).toBe(true);
    expect(document.activeElement).toBe(button);
  });

  test('how sure the plan is can be asked once it is known, and the keyboard goes to the answer', async () => {
    const { jobs } = opened();
    await screen.findByText('Planning…');
    jobs[0]!.events.onProgress({ ...running, plan: supper });
    const button = await screen.findByRole('button', { name: 'How sure?' });
    expect(button).toHaveProperty('disabled', true);
    const { finishMinutes: finish } = supper;
    const sure = { samples: 9, plannedFinish: finish, p50: finish, p90: finish, meanMinutes: finish };
    const none = { by: [], steps: [], limits: [], anyLimit: 0, stopped: false };
    jobs[0]!.events.onDone({ ...planned, plan: supper, sure: { ...sure, ...none } });
    await expect.poll(() => (button as HTMLButtonElement).disabled).toBe(false);
    await fireEvent.click(button);
    expect(document.activeElement).toBe(screen.getByRole('heading', { name: 'How sure?' }));
  });

  test('another pick puts the question what would help away and stops it', async () => {
    const { jobs, helps } = opened();
    await screen.findByText('Planning…');
    jobs[0]!.events.onDone(planned);
    await fireEvent.click(await screen.findByRole('button', { name: 'What would help?' }));
    await fireEvent.change(await screen.findByLabelText('Intent'), { target: { value: 'calmest' } });
    expect(helps[0]!.stopped).toBe(true);
    expect(screen.queryByRole('heading', { name: 'What would help?' })).toBeNull();
  });

  test('says what clashes where there can be no plan, and what mends it', async () => {
    const { jobs } = opened();
    await screen.findByText('Planning…');
    const table = {
      id: 'a',
      kind: 'table',
      words: 'the pie is on the table at 13:00',
      mend: 'put it on the table later',
      document: 'session supper',
      path: 'table.at',
    } as const;
    const hands = {
      ...table,
      id: 'b',
      kind: 'hands',
      words: 'Ada cooks alone',
      mend: 'get more hands',
      path: 'people',
    } as const;
    jobs[0]!.events.onDone({
      kind: 'impossible',
      reason: 'x',
      requirements: [],
      clash: { members: [table, hands], minimal: true, singles: [hands], together: [] },
    });
    const alert = await screen.findByRole('alert');
    expect(alert.textContent).toMatch(/cannot all be:.*pie is on the table at 13:00.*table\.at.*Ada cooks alone/s);
    expect(alert.textContent).toMatch(/This makes a plan possible:\s*get more hands/);
  });

  test('another pick plans anew', async () => {
    const { jobs } = opened();
    await screen.findByText('Planning…');
    jobs[0]!.events.onDone(planned);
    await fireEvent.change(await screen.findByLabelText('Intent'), { target: { value: 'thriftiest' } });
    expect(jobs.at(-1)!.request.intent).toBe('thriftiest');
  });

  test.each<{ name: string; result: PlanResult; title: string; words: string }>([
    {
      name: 'nothing fits',
      result: { kind: 'impossible', reason: 'The roast cannot end by 11:00.', requirements: ['table at 11:00'] },
      title: 'No plan can exist',
      words: 'table at 11:00',
    },
    {
      name: 'nothing found',
      result: { kind: 'unknown', reason: 'no plan in the effort given' },
      title: 'No plan found yet',
      words: 'more effort may find one',
    },
    {
      name: 'documents with faults',
      result: { kind: 'refused', faults: [fault] },
      title: 'These documents cannot be planned',
      words: 'Add one.',
    },
    {
      name: 'a plan that fails its check',
      result: { kind: 'failed-check', violations: ['The rack is overfilled at 10:20.'] },
      title: 'The plan failed its check and is not shown',
      words: 'The rack is overfilled at 10:20.',
    },
  ])('says in words when $name', async ({ result, title, words }) => {
    const { jobs } = opened();
    await screen.findByText('Planning…');
    jobs[0]!.events.onDone(result);
    const alert = await screen.findByRole('alert');
    expect(alert.textContent).toContain(title);
    expect(alert.textContent).toContain(words);
    expect(screen.queryByRole('group', { name: /^Lanes of/ })).toBeNull();
  });

  test('says which documents cannot be used, and why', async () => {
    opened({}, [{ ...entry('session', 'torn', 'Torn'), faults: [fault] }]);
    expect(await screen.findByText(/torn.session.json cannot be used/)).toBeTruthy();
    expect(screen.getByText('dishes[0]')).toBeTruthy();
  });

  test('says when the program is gone', async () => {
    opened({ list: () => Promise.reject(new Error('not paired')) });
    expect((await screen.findByRole('alert')).textContent).toContain('not paired');
  });
});

describe('comparing', () => {
  test('draws the best plan so far on either side, and each has its own stop', async () => {
    const { jobs } = opened();
    await screen.findByText('Planning…');
    jobs[0]!.events.onDone(planned);
    await fireEvent.click(await screen.findByRole('button', { name: 'Compare' }));
    const below = screen.getByRole('region', { name: 'Below' });
    jobs.at(-1)!.events.onProgress({
      value: 60,
      bound: 50,
      share: 0.5,
      tier: 'finish',
      tiers: [{ id: 'finish', unit: 'min', value: 60, bound: 50, proven: false }],
      plan: { ...supper, finishMinutes: 60 },
    });
    expect(await within(below).findByText('The best plan so far.')).toBeTruthy();
    expect((await screen.findByRole('table', { name: 'Figures of both plans' })).textContent).toContain('6 min sooner');
    await fireEvent.click(within(below).getByRole('button', { name: 'Stop and keep this plan' }));
    expect(jobs.map(({ stopped }) => stopped)).toEqual([false, true]);
  });

  test('shows two plans on one clock with the figures between them', async () => {
    const { jobs } = opened();
    await screen.findByText('Planning…');
    jobs[0]!.events.onDone(planned);
    await fireEvent.click(await screen.findByRole('button', { name: 'Compare' }));
    expect(jobs.at(-1)!.request.intent).toBe('thriftiest');
    jobs.at(-1)!.events.onDone({ ...planned, plan: { ...supper, finishMinutes: 60 } });
    const table = await screen.findByRole('table', { name: 'Figures of both plans' });
    expect(table.textContent).toContain('6 min sooner');
    expect(screen.getAllByRole('slider')).toHaveLength(2);
    const [above, below] = screen.getAllByRole('slider');
    await fireEvent.keyDown(above!, { key: 'PageUp' });
    expect(below!.getAttribute('aria-valuetext')).toBe('10:15');
  });
});
