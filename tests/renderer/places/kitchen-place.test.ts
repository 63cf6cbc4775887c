// @vitest-environment happy-dom
import { cleanup, fireEvent, render, screen, within } from '@testing-library/svelte';
import { afterEach, describe, expect, test } from 'vitest';
import type { DocumentEntry, Host } from '../../../app/api.ts';
import { reckonKitchen } from '../../../app/host/reckon-kitchen.ts';
import App from '../../../renderer/App.svelte';
import type { Kitchen } from '../../../solver/kitchen/kitchen.ts';
import { standInHost } from '../../support/stand-in-host.ts';
import { kitchen, session, supper } from '../../support/supper.ts';

afterEach(cleanup);

// Invented readings: 200 °C after 12 minutes from cold, and 140 °C left 20 minutes after switching off at 200 °C.
const read: Kitchen = {
  ...kitchen,
  ovens: kitchen.ovens.map(({ heating: _, cooling: __, ...oven }) => ({
    ...oven,
    readings: { toHeat: [{ minutes: 12, celsius: 200 }], afterOff: [{ fromC: 200, minutes: 20, celsius: 140 }] },
  })),
};
const other: Kitchen = { ...kitchen, id: 'other-kitchen', name: 'other kitchen' };
const entry = (kind: DocumentEntry['kind'], { id, name }: { id: string; name: string }): DocumentEntry => ({
  kind,
  id,
  name,
  file: `demo/${id}.${kind}.json`,
  demo: true,
  faults: [],
});

/** The kitchen's place, as one comes to it from a plan. */
async function opened() {
  const stand = standInHost();
  const host: Host = {
    ...stand,
    list: () => Promise.resolve([entry('session', session), entry('kitchen', read), entry('kitchen', other)]),
    kitchen: (id) => Promise.resolve({ ok: true, value: id === other.id ? other : read }),
    kitchenFigures: (given) => Promise.resolve(reckonKitchen(given)),
  };
  render(App, { props: { host, now: () => 0, keeper: null, firstSession: 'supper' } });
  await screen.findByText('Planning…');
  stand.jobs[0]!.events.onDone({ kind: 'planned', plan: supper, solveMs: 1, firstPlanMs: 1 });
  await fireEvent.click(screen.getByRole('button', { name: 'Kitchen' }));
  await screen.findByRole('heading', { name: 'The fit' });
  return stand;
}
const field = (name: string | RegExp) => screen.getByRole<HTMLInputElement>('textbox', { name });
const minutes = () => field('minutes from cold, reading 1');
const type = (input: HTMLInputElement, value: string) => fireEvent.change(input, { target: { value } });
const heatUp = () => screen.getByRole('button', { name: /how Time to heat/ });
const button = (name: string | RegExp) => screen.getByRole('button', { name });

describe('a kitchen that is edited', () => {
  test('shows its readings beside the fit, and another reading is another fit', async () => {
    await opened();
    expect(minutes().value).toBe('12');
    const plot = screen.getByRole('img');
    const line = () => plot.querySelector('path.line')!.getAttribute('d');
    const [before, told] = [line(), heatUp().textContent];
    await type(minutes(), '24');
    await expect.poll(() => heatUp().textContent).not.toBe(told);
    expect(line()).not.toBe(before);
    expect(screen.getByText(/Changed, not saved yet/)).toBeTruthy();
  });

  test('says beside its field what is wrong with an impossible reading, and loses nothing that was typed', async () => {
    await opened();
    const told = heatUp().textContent;
    await type(field('°C reached, reading 1'), '15');
    const wrong = () => field('°C reached, reading 1');
    await expect.poll(() => wrong().getAttribute('aria-invalid')).toBe('true');
    // Below the 20 °C of the room.
    expect(document.getElementById(wrong().getAttribute('aria-describedby')!)!.textContent).toMatch(
      /Found 15 °C.*wanted/,
    );
    expect([wrong().value, minutes().value, heatUp().textContent]).toEqual(['15', '12', told]);
    await fireEvent.click(button('Go to it'));
    expect(document.activeElement).toBe(wrong());
  });

  test('takes no number for a number: the text stays in its field with its fault', async () => {
    await opened();
    await type(minutes(), 'a dozen');
    await expect.poll(() => minutes().getAttribute('aria-invalid')).toBe('true');
    expect(minutes().value).toBe('a dozen');
  });

  test('undo and redo go back and forth, and the keyboard stays on them', async () => {
    await opened();
    await type(minutes(), '24');
    button('Undo').focus();
    await fireEvent.click(button('Undo'));
    expect([minutes().value, document.activeElement]).toEqual(['12', button('Undo')]);
    expect(button('Undo').getAttribute('aria-disabled')).toBe('true');
    await fireEvent.click(button('Redo'));
    expect(minutes().value).toBe('24');
  });

  test('a reading that is added has the keyboard; one that is taken out gives it back', async () => {
    await opened();
    await fireEvent.click(button('Add a reading from cold'));
    const added = field('minutes from cold, reading 2');
    await expect.poll(() => document.activeElement).toBe(added);
    // Found missing by the host, and said in words of a form, not of a document.
    expect((await screen.findAllByText('Still empty: a number is needed here.')).length).toBe(2);
    await fireEvent.click(button('Take out: From cold, at full power, reading 2'));
    await expect.poll(() => document.activeElement).toBe(button('Add a reading from cold'));
    expect(screen.queryByRole('textbox', { name: 'minutes from cold, reading 2' })).toBeNull();
  });

  test('is there as it was left after another place, and after another kitchen, which is told as not saved', async () => {
    await opened();
    await type(minutes(), '24');
    await fireEvent.click(button('Plan'));
    await fireEvent.click(button(/^Kitchen\s*, not saved$/));
    expect(minutes().value).toBe('24');
    await fireEvent.change(screen.getByLabelText('Kitchen'), { target: { value: other.id } });
    await screen.findByRole('heading', { name: 'other kitchen' });
    expect(screen.getByText(/Not saved either: small kitchen/)).toBeTruthy();
    expect(screen.getByRole('option', { name: 'small kitchen (not saved)' })).toBeTruthy();
    await fireEvent.change(screen.getByLabelText('Kitchen'), { target: { value: read.id } });
    await expect.poll(() => minutes().value).toBe('24');
  });

  test('is saved, and the plan that was made in it is made anew', async () => {
    const { saved, jobs } = await opened();
    await type(minutes(), '24');
    await fireEvent.click(button('Save this kitchen'));
    await screen.findByText(/^Saved as/);
    expect(saved).toMatchObject([{ id: read.id, ovens: [{ readings: { toHeat: [{ minutes: 24 }] } }] }]);
    await expect.poll(() => jobs.length).toBe(2);
    expect(jobs[1]!.request).toEqual(jobs[0]!.request);
  });
});

describe('a number that tells how it came about', () => {
  test.each<{ name: string; away: (panel: HTMLElement) => unknown }>([
    { name: 'Close', away: (panel) => fireEvent.click(within(panel).getByRole('button', { name: 'Close' })) },
    { name: 'Escape', away: () => fireEvent.keyDown(document.activeElement!, { key: 'Escape' }) },
  ])('opens its working, where the keyboard goes, and $name gives the keyboard back', async ({ away }) => {
    await opened();
    await fireEvent.click(heatUp());
    const panel = await screen.findByRole('complementary', { name: /Time to heat/ });
    expect(heatUp().getAttribute('aria-expanded')).toBe('true');
    await expect.poll(() => document.activeElement).toBe(within(panel).getByRole('heading', { level: 2 }));
    // Formula, what goes into it with its unit, and where it is from.
    expect(panel.textContent).toMatch(/ln.*J\/K\s*heat capacity.*W\s*rated power.*Source of the formula/s);
    await away(panel);
    expect(screen.queryByRole('complementary')).toBeNull();
    expect(document.activeElement).toBe(heatUp());
  });

  test('is reckoned anew in the panel while a reading changes, and the keyboard stays in the field', async () => {
    await opened();
    await fireEvent.click(heatUp());
    const panel = await screen.findByRole('complementary');
    const told = panel.querySelector('.value')!.textContent;
    minutes().focus();
    await type(minutes(), '24');
    await expect.poll(() => panel.querySelector('.value')!.textContent).not.toBe(told);
    expect(panel.querySelector('.value')!.textContent).toBe(heatUp().textContent);
    expect(document.activeElement).toBe(minutes());
  });

  test('has its panel put away when the place is left', async () => {
    await opened();
    await fireEvent.click(heatUp());
    await screen.findByRole('complementary');
    await fireEvent.click(button('Plan'));
    expect(screen.queryByRole('complementary', { name: /Time to heat/ })).toBeNull();
  });
});

describe('below the plan', () => {
  test('the account tells what the plan takes, and the strip the same energy', async () => {
    await opened();
    await fireEvent.click(button('Plan'));
    const account = await screen.findByRole('region', { name: 'Energy, water and money' });
    const energy = /This plan takes (\d+\.\d\d kWh)/.exec(account.textContent)![1]!;
    expect(document.querySelector('.head .energy dd')!.textContent).toBe(energy);
    const shares = [...within(account).getByRole('table', { name: 'By source' }).querySelectorAll('tbody th + td')];
    const sum = shares.map((cell) => parseFloat(cell.textContent)).reduce((a, b) => a + b, 0);
    // Each is rounded to a hundredth.
    expect(Math.abs(sum - parseFloat(energy))).toBeLessThanOrEqual(0.005 * (shares.length + 1));
  });

  test('every box says for whom it is, what it contains and until when it keeps', async () => {
    await opened();
    await fireEvent.click(button('Plan'));
    const boxes = await screen.findByRole('region', { name: /^The boxes/ });
    const cards = within(boxes).getAllByRole('heading', { level: 3 });
    expect(cards.map((card) => card.textContent)).toEqual(
      expect.arrayContaining([expect.stringMatching(/^Eve 2 boxes/)]),
    );
    const eve = cards.find((card) => card.textContent.startsWith('Eve'))!.closest('li')!;
    expect(eve.textContent).toMatch(/Contains.*Kept free of\s*gluten.*Use by/s);
  });

  test('the figures of a plan go with it: none of the plan before stand below the next', async () => {
    const { jobs } = await opened();
    await fireEvent.click(button('Plan'));
    await screen.findByRole('region', { name: /^The boxes/ });
    await fireEvent.change(screen.getByLabelText('Intent'), { target: { value: 'calmest' } });
    expect(screen.getByRole('region', { name: /^The boxes/ })).toBeTruthy();
    jobs.at(-1)!.events.onProgress({ value: 70, bound: 60, share: 0.5, plan: { ...supper, finishMinutes: 70 } });
    await expect.poll(() => screen.queryByRole('region', { name: /^The boxes/ })).toBeNull();
  });

  test('the general caution stands once: in the plan’s own cautions', async () => {
    await opened();
    expect(screen.getAllByText(/probe thermometer decides when food is done/)).toHaveLength(1);
    await fireEvent.click(button('Plan'));
    const cautions = screen.getByRole('region', { name: 'Cautions' });
    expect(cautions.textContent).toMatch(/probe thermometer decides when food is done/);
    expect(screen.getAllByText(/probe thermometer decides when food is done/)).toHaveLength(1);
  });
});
