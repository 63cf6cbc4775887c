/** The kitchen by keyboard, how numbers came about, and what stands below a plan, in a real browser as `npm start` serves it. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Kitchen } from '../../solver/kitchen/kitchen.ts';
import { PATIENCE, seriousFaults, settledPlan, tooWide } from './page-words.ts';
import { openApp, whyNoBrowser, type ServedApp } from './served-app.ts';

const reason = await whyNoBrowser();
if (reason !== null) console.warn(`browser tests skipped: ${reason}`);

describe.skipIf(reason !== null)('the served app', () => {
  let app: ServedApp;
  let page: Page;
  const field = (name: string) => page.getByRole('textbox', { name, exact: true });
  const button = (name: string | RegExp) => page.getByRole('button', { name, exact: true });
  const heatUp = () => button(/how Time to heat/);
  const panel = () => page.getByRole('complementary', { name: /^Time to heat/ });
  const focused = () =>
    page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? document.activeElement?.textContent);
  const press = async (name: string | RegExp, key = 'Enter') => {
    await button(name).focus();
    await page.keyboard.press(key);
  };
  /** Types over what is in a field, as a hand does, and goes on by Tab. */
  const typeOver = async (name: string, text: string) => {
    await field(name).focus();
    await page.keyboard.press('Control+A');
    await page.keyboard.type(text);
    await page.keyboard.press('Tab');
  };
  const account = () => page.getByRole('region', { name: 'Energy, water and money' });

  beforeAll(async () => {
    app = await openApp();
    page = app.page;
    await settledPlan(page);
  });
  afterAll(async () => {
    await app.close();
  });

  test('below the plan stand its account, its boxes and its cautions, each open to a reader of any kind', async () => {
    await account().waitFor({ timeout: PATIENCE });
    const boxes = page.getByRole('region', { name: /^The boxes/ });
    expect(await boxes.getByRole('heading', { level: 3 }).count()).toBeGreaterThan(3);
    await page
      .getByRole('region', { name: 'Cautions' })
      .getByText(/probe thermometer/)
      .first()
      .waitFor();
    // Everything laid open, so that nothing is left out of sight.
    await page.evaluate(() => document.querySelectorAll('details').forEach((each) => (each.open = true)));
    for (const colorScheme of ['dark', 'light'] as const) {
      await page.emulateMedia({ colorScheme });
      expect(await seriousFaults(page)).toEqual([]);
    }
    await page.setViewportSize({ width: 320, height: 640 });
    await expect.poll(() => tooWide(page)).toBeLessThanOrEqual(0);
    await page.setViewportSize({ width: 1440, height: 900 });
  });

  test('on paper are the boxes and the cautions, and nothing to press', async () => {
    await page.emulateMedia({ media: 'print' });
    await page
      .getByRole('region', { name: /^The boxes/ })
      .getByText('Use by')
      .first()
      .waitFor();
    expect(await page.getByRole('region', { name: 'Cautions' }).isVisible()).toBe(true);
    // Each card is a label by itself: its energy and how to reheat stand on it.
    const cards = page
      .getByRole('region', { name: /^The boxes/ })
      .getByRole('list')
      .first()
      .locator('> li');
    expect(await cards.count()).toBeGreaterThan(3);
    for (const card of await cards.all())
      expect(await card.innerText()).toMatch(/ kJ, \d+ kcal a box\. .*heat once only/);
    expect(await account().isVisible()).toBe(false);
    for (const name of ['Kitchen', 'How sure?', 'Why this long?']) expect(await button(name).isVisible()).toBe(false);
    await page.emulateMedia({ media: 'screen' });
  });

  test('a step tells the numbers behind it on its card, and Escape goes from a working back to it', async () => {
    // A bar under the pointer would show its own card once this one is closed.
    await page.mouse.move(0, 0);
    await page.locator('[data-bar^="rack/"]').first().focus();
    await page.keyboard.press('Enter');
    const card = page.getByRole('complementary', { name: /^About/ });
    const number = card.getByRole('button', { name: /: how .* came about$/ }).first();
    await number.focus();
    const name = await focused();
    await page.keyboard.press('Enter');
    await page
      .getByText(/^Source of the formula/)
      .first()
      .waitFor();
    await page.keyboard.press('Escape');
    await expect.poll(focused).toBe(name);
    await page.keyboard.press('Escape');
    await card.waitFor({ state: 'detached' });
  });

  test('a number of the kitchen opens its working by key, and Escape gives the keyboard back', async () => {
    await press('Kitchen');
    await page.getByRole('heading', { name: 'The fit' }).waitFor();
    await heatUp().focus();
    const name = await focused();
    await page.keyboard.press('Enter');
    await expect.poll(focused).toMatch(/^Time to heat/);
    expect(await seriousFaults(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await panel().waitFor({ state: 'detached' });
    expect(await focused()).toBe(name);
  });

  test('a reading that changes bends the fit and its working, and the keyboard stays in the table', async () => {
    await press(/how Time to heat/);
    await panel().waitFor();
    const minutes = async () => parseFloat((await heatUp().textContent())!);
    const off = () => page.getByText(/The readings lie/).textContent();
    const [told, lay] = [await minutes(), await off()];
    await typeOver('minutes from cold, reading 2', '14');
    await expect.poll(minutes).toBeGreaterThan(told);
    expect(await off()).not.toBe(lay);
    // The second ring stands at 14 minutes by the scale of the plot: between the marks of 10 and 15.
    const plot = page.getByRole('img', { name: /heating up and switched off/ });
    const at = (mark: string) =>
      plot
        .getByText(mark, { exact: true })
        .first()
        .evaluate((text) => Number(text.getAttribute('x')));
    const ring = Number(await plot.locator('circle').nth(1).getAttribute('cx'));
    expect(ring).toBeCloseTo((await at('10')) + ((await at('15')) - (await at('10'))) * 0.8, 1);
    expect(await panel().textContent()).toContain(await heatUp().textContent());
    expect(await field('°C reached, reading 2').evaluate((input) => input === document.activeElement)).toBe(true);
    await press('Close');
  });

  test('an impossible reading is marked beside its field, stays as it was typed, and goes by undo', async () => {
    await typeOver('°C reached, reading 1', '5');
    await page.getByText(/One field is to be mended/).waitFor();
    expect(await field('°C reached, reading 1').getAttribute('aria-invalid')).toBe('true');
    expect(await seriousFaults(page)).toEqual([]);
    await press('Go to it');
    expect(await field('°C reached, reading 1').inputValue()).toBe('5');
    await press('Undo');
    await page.getByText(/One field is to be mended/).waitFor({ state: 'detached' });
    expect(await field('°C reached, reading 1').inputValue()).toBe('120');
    // The host says by its status that it was not a kitchen; the browser tells that in its console.
    expect(app.complaints.filter((each) => !each.includes('422'))).toEqual([]);
  });

  test.each([
    { name: 'a desktop in the dark', width: 1440, height: 900, colorScheme: 'dark' },
    { name: 'the narrowest screen', width: 320, height: 640, colorScheme: 'light' },
  ] as const)('the kitchen has no serious fault of access, and scrolls one way only, on $name', async (screen) => {
    await page.setViewportSize(screen);
    await page.emulateMedia({ colorScheme: screen.colorScheme });
    await expect.poll(() => tooWide(page)).toBeLessThanOrEqual(0);
    expect(await seriousFaults(page)).toEqual([]);
    await page.setViewportSize({ width: 1440, height: 900 });
    await page.emulateMedia({ colorScheme: 'light' });
  });

  test('what is not saved outlives another place and a reload', async () => {
    await press('Plan');
    await page.reload();
    await settledPlan(page);
    await press(/^Kitchen/);
    await expect.poll(() => field('minutes from cold, reading 2').inputValue()).toBe('14');
    expect(readdirSync(app.data)).not.toContain('harbour-one-oven.kitchen.json');
  });

  test('saved by key it is a file of the data folder, and the plan is made anew with it', async () => {
    // Twice the demo's tariff shows in the plan's money, whatever plan is found.
    await typeOver('electricity', '0.62');
    await press('Save this kitchen');
    await page.getByText(/^Saved as harbour-one-oven\.kitchen\.json/).waitFor();
    const file = readFileSync(join(app.data, 'harbour-one-oven.kitchen.json'), 'utf8');
    const kitchen = JSON.parse(file) as Kitchen;
    expect(kitchen.ovens[0]!.readings!.toHeat![1]).toEqual({ minutes: 14, celsius: 200 });
    await press('Plan');
    await settledPlan(page);
    await account().waitFor({ timeout: PATIENCE });
    // All of this kitchen is electric; kWh, litres and money are rounded to the digits shown.
    const slack = 0.005 * 0.62 + (0.05 / 1000) * kitchen.tariff.waterPerM3 + 0.005;
    // Until the new plan is there, the account of the one before stands.
    const untold = async (): Promise<number> => {
      const said = await account().textContent();
      const figures = /takes ([\d.]+) kWh, ([\d.]+) L water, ([\d.]+) EUR/.exec(said!)!.slice(1).map(Number);
      const [kWh, litres, money] = figures;
      return Math.abs(money! - (kWh! * 0.62 + (litres! / 1000) * kitchen.tariff.waterPerM3));
    };
    await expect.poll(untold, { timeout: PATIENCE }).toBeLessThanOrEqual(slack);
  });
});
