// @vitest-environment happy-dom
import { cleanup, fireEvent, render, screen, within } from '@testing-library/svelte';
import axe from 'axe-core';
import { afterEach, describe, expect, test } from 'vitest';
import LaneChart from '../../../renderer/chart/LaneChart.svelte';
import RunningOrder from '../../../renderer/chart/RunningOrder.svelte';
import WhyThisLong from '../../../renderer/chart/WhyThisLong.svelte';
import { wholeView } from '../../../renderer/chart/layout/chart-layout.ts';
import { ChoiceState } from '../../../renderer/state/choice.svelte.ts';
import { ClockState } from '../../../renderer/state/clock.svelte.ts';
import { ViewState } from '../../../renderer/state/view.svelte.ts';
import { supper } from '../../support/supper.ts';

afterEach(cleanup);

function shown() {
  const view = new ViewState();
  view.open(wholeView(supper));
  const clock = new ClockState(() => 0);
  clock.open(supper);
  const choice = new ChoiceState();
  const { container } = render(LaneChart, {
    props: { plan: supper, view, clock, choice, reading: 'near', everything: false, title: 'Lanes of supper' },
  });
  const bar = (start: string): SVGElement => container.querySelector(`[data-bar^="${start}"]`)!;
  return { view, clock, choice, container, bar };
}

describe('the lane chart', () => {
  test('is a group of lanes, each a group of bars that say themselves', () => {
    shown();
    const chart = screen.getByRole('group', { name: 'Lanes of supper' });
    const ada = within(chart).getByRole('group', { name: 'Hands, Ada' });
    const minutes = supper.steps.flatMap((step) => step.segments).filter((segment) => segment.person === 'ada');
    expect(within(ada).getAllByRole('button')).toHaveLength(minutes.length);
    expect(
      within(chart).getByRole('button', { name: /^roast the chicken \(chicken\), 10:10–10:43, 33 min, Ada, the oven/ }),
    ).toBeTruthy();
  });

  test('the keyboard enters at one bar and goes on by arrows', async () => {
    const { container, bar, choice } = shown();
    const stops = [...container.querySelectorAll('[data-bar]')].filter((each) => each.getAttribute('tabindex') === '0');
    expect(stops).toHaveLength(1);
    await fireEvent.keyDown(stops[0]!, { key: 'ArrowRight' });
    expect(choice.current).toMatch(/^hands\/ada\/chicken\/cut/);
    await fireEvent.keyDown(bar('hands/ada/chicken/cut'), { key: 'ArrowDown' });
    expect(choice.current).toMatch(/^hands\/bo\//);
  });

  test('Enter opens the card, whose ties lead on; Escape closes it', async () => {
    const { bar, choice } = shown();
    await fireEvent.keyDown(bar('rack/top/chicken'), { key: 'Enter' });
    const card = screen.getByRole('complementary', { name: 'About roast the chicken' });
    expect(card.textContent).toContain('a probe thermometer decides');
    await fireEvent.click(within(card).getByRole('button', { name: /rest the chicken/ }));
    expect(screen.getByRole('complementary', { name: 'About rest the chicken' })).toBeTruthy();
    await fireEvent.keyDown(screen.getByRole('complementary'), { key: 'Escape' });
    expect([choice.pinned, screen.queryByRole('complementary')]).toEqual([false, null]);
  });

  test('what the chosen step is tied to stands out, what it is not steps back', async () => {
    const { bar } = shown();
    await fireEvent.click(bar('rack/top/chicken'));
    const standing = (start: string) =>
      ['chosen', 'linked', 'kin', 'dim'].find((each) => bar(start).parentElement!.classList.contains(each));
    expect(standing('hands/ada/chicken/roast')).toBe('chosen');
    expect(standing('resting/resting/chicken/rest')).toBe('linked');
    expect(standing('kettle/')).toBe('dim');
  });

  test('plus and minus zoom, Shift and arrows pan, 0 shows everything', async () => {
    const { bar, view } = shown();
    const at = bar('rack/top/chicken');
    await fireEvent.keyDown(at, { key: '+' });
    expect(view.zoom).toBeCloseTo(1.5);
    const { from } = view.seen;
    await fireEvent.keyDown(at, { key: 'ArrowRight', shiftKey: true });
    expect(view.seen.from).toBeGreaterThan(from);
    await fireEvent.keyDown(at, { key: '0' });
    expect(view.fits).toBe(true);
  });

  test('the cursor is a slider on the clock', async () => {
    const { clock } = shown();
    const cursor = screen.getByRole('slider', { name: 'Cursor on the clock' });
    await fireEvent.keyDown(cursor, { key: 'PageUp' });
    await fireEvent.keyDown(cursor, { key: 'ArrowRight' });
    expect(clock.minute).toBe(16);
    expect(cursor.getAttribute('aria-valuetext')).toBe('10:16');
    await fireEvent.keyDown(cursor, { key: 'End' });
    expect(cursor.getAttribute('aria-valuenow')).toBe('77');
  });

  test('has no fault of structure', async () => {
    const { container } = shown();
    // Contrast and sizes need a real browser.
    const { violations } = await axe.run(container, {
      rules: { 'color-contrast': { enabled: false }, region: { enabled: false }, 'target-size': { enabled: false } },
    });
    expect(violations.map((each) => `${each.id}: ${each.nodes[0]?.html}`)).toEqual([]);
  });
});

describe('the binding chain', () => {
  const roast = supper.steps.find((step) => step.id === 'chicken/roast')!;
  const { start: from, end: until } = roast;
  const chain = [
    { step: roast.id, name: roast.name, from, until, why: 'heat' as const, because: 'waits for the oven' },
  ];
  const plan = { ...supper, bindingChain: chain };

  test('is marked only when asked for, and said by its bars', () => {
    const props = {
      plan,
      view: new ViewState(),
      choice: new ChoiceState(),
      reading: 'near',
      everything: false,
    } as const;
    const clock = new ClockState(() => 0);
    const { container, rerender } = render(LaneChart, { props: { ...props, clock, title: 'Lanes' } });
    const said = (): number => screen.queryAllByRole('button', { name: /in the binding chain$/ }).length;
    expect([container.querySelector('.chain'), said()]).toEqual([null, 0]);
    return rerender({ why: true }).then(() => {
      expect(container.querySelectorAll('.chain rect:not(.under)')).toHaveLength(1);
      expect(said()).toBeGreaterThan(1);
    });
  });

  test('is a list whose steps lead to their bars', async () => {
    const gone: string[] = [];
    const { container } = render(WhyThisLong, { props: { plan, ongo: (step: string) => gone.push(step) } });
    expect(screen.getByRole('region', { name: 'Why this long?' }).textContent).toContain('waits for the oven');
    await fireEvent.click(within(screen.getByRole('list')).getByRole('button', { name: roast.name }));
    expect(gone).toEqual([roast.id]);
    const { violations } = await axe.run(container, {
      rules: { 'color-contrast': { enabled: false }, region: { enabled: false } },
    });
    expect(violations.map((each) => each.id)).toEqual([]);
  });
});

describe('the running order', () => {
  test('is a table with a row for each segment, and marks what is now', () => {
    render(RunningOrder, { props: { plan: supper, minute: 26 } });
    const table = screen.getByRole('table', { name: /Running order/ });
    const now = [...table.querySelectorAll('tr.now')].map((row) => row.querySelector('th')!.textContent);
    expect(now).toEqual(['10:11', '10:22', '10:23', '10:24', '10:26', '10:26']);
    expect(within(table).getAllByText('Bo').length).toBeGreaterThan(5);
  });
});
