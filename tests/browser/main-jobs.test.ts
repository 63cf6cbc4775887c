/** The main jobs in a real browser, on the demo session, as `npm start` serves it. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { PATIENCE, seriousFaults, settledPlan } from './page-words.ts';
import { openApp, whyNoBrowser, type ServedApp } from './served-app.ts';

const reason = await whyNoBrowser();
if (reason !== null) console.warn(`browser tests skipped: ${reason}`);

describe.skipIf(reason !== null)('the served app', () => {
  let app: ServedApp;
  let page: Page;
  const chart = () => page.getByRole('group', { name: /^Lanes of/ });
  const cursor = () => page.getByRole('slider', { name: 'Cursor on the clock' }).first();
  const planned = () => settledPlan(page);

  beforeAll(async () => {
    app = await openApp();
    page = app.page;
  });
  afterAll(async () => {
    await app.close();
  });

  test('takes the start code out of the address and draws the demo session, planned and checked', async () => {
    await planned();
    expect(page.url()).not.toContain('code');
    expect(await chart().getByRole('button').count()).toBeGreaterThan(45);
    expect(await chart().getByRole('group').count()).toBeGreaterThan(6);
    expect(app.complaints).toEqual([]);
  });

  test('the cursor goes by keys and by pointer, and what is now goes with it', async () => {
    await cursor().focus();
    await page.keyboard.press('PageUp');
    expect(await cursor().getAttribute('aria-valuetext')).toBe('10:15');
    await page.getByRole('region', { name: 'Now and next at 10:15' }).waitFor();
    const box = (await cursor().boundingBox())!;
    await page.mouse.move(box.x + box.width / 2, box.y + 12);
    await page.mouse.down();
    await page.mouse.move(box.x + box.width / 2 + 200, box.y + 12, { steps: 4 });
    await page.mouse.up();
    expect(Number(await cursor().getAttribute('aria-valuenow'))).toBeGreaterThan(25);
  });

  test('the keyboard reads the chart: from bar to bar, a card, a tie, and back', async () => {
    await cursor().focus();
    await page.keyboard.press('Tab');
    const first = await page.evaluate(() => document.activeElement?.getAttribute('aria-label'));
    await page.keyboard.press('ArrowRight');
    const second = await page.evaluate(() => document.activeElement?.getAttribute('aria-label'));
    const startOf = (label: string | null | undefined): string => /(\d\d:\d\d)–\d\d:\d\d/.exec(label ?? '')?.[1] ?? '';
    expect(startOf(first)).toMatch(/^1\d:\d\d$/);
    expect(second).not.toBe(first);
    expect(startOf(second) >= startOf(first)).toBe(true);
    await page.keyboard.press('Enter');
    await page.getByRole('complementary').waitFor();
    await page.keyboard.press('Escape');
    expect(await page.getByRole('complementary').count()).toBe(0);
    expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe(second);
  });

  test('hovering shows the card of a step and steps back what is not tied to it', async () => {
    const bar = chart().locator('[data-bar^="rack/"]').first();
    await bar.hover();
    await page.getByRole('complementary').waitFor();
    expect(await chart().locator('.bar.chosen').count()).toBeGreaterThan(1);
    expect(await chart().locator('.bar.dim').count()).toBeGreaterThan(1);
    await page.mouse.move(700, 10);
    await page.getByRole('complementary').waitFor({ state: 'detached' });
  });

  test('Ctrl and wheel zoom, a drag pans, two fingers zoom, Fit shows everything', async () => {
    const plot = (await chart().boundingBox())!;
    const middle = { x: plot.x + plot.width / 2, y: Math.min(plot.y + plot.height, 900) - 30 };
    // The bar nearest to the middle stays in sight, whatever plan it is.
    const nearest = await chart()
      .locator('[data-bar^="rack/"]')
      .evaluateAll((bars, x) => {
        const off = (each: Element): number => {
          const { left, width } = each.getBoundingClientRect();
          return Math.abs(left + width / 2 - x);
        };
        return [...bars].sort((a, b) => off(a) - off(b))[0]?.getAttribute('data-bar');
      }, middle.x);
    const bar = chart().locator(`[data-bar=${JSON.stringify(nearest)}]`);
    const width = async () => (await bar.boundingBox())!.width;
    const before = await width();
    await page.mouse.move(middle.x, middle.y);
    await page.keyboard.down('Control');
    await page.mouse.wheel(0, -400);
    await page.keyboard.up('Control');
    await expect.poll(width).toBeGreaterThan(before * 1.5);
    const left = (await bar.boundingBox())!.x;
    await page.mouse.down();
    await page.mouse.move(middle.x + 150, middle.y, { steps: 5 });
    await page.mouse.up();
    await expect.poll(async () => (await bar.boundingBox())!.x - left).toBeGreaterThan(50);
    const wide = await width();
    const touch = await page.context().newCDPSession(page);
    const fingers = (apart: number) =>
      [-1, 1].map((side) => ({ x: middle.x + side * apart, y: middle.y, id: side + 1 }));
    await touch.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: fingers(60) });
    for (const apart of [80, 110, 150]) {
      await touch.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: fingers(apart) });
    }
    await touch.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
    await expect.poll(width).toBeGreaterThan(wide * 1.3);
    await page.getByRole('button', { name: 'Fit' }).click();
    await expect.poll(width).toBeCloseTo(before, 0);
  });

  test('the keyboard asks why this long: the chain is marked, listed, and leads to its bars', async () => {
    const toggle = page.getByRole('button', { name: 'Why this long?' });
    await toggle.focus();
    await page.keyboard.press('Enter');
    expect(await toggle.getAttribute('aria-pressed')).toBe('true');
    const list = page.getByRole('region', { name: 'Why this long?' });
    await list.waitFor();
    expect(await chart().locator('.chain rect:not(.under)').count()).toBeGreaterThan(3);
    expect(
      await chart()
        .getByRole('button', { name: /in the binding chain$/ })
        .count(),
    ).toBeGreaterThan(3);
    expect(await seriousFaults(page)).toEqual([]);
    await list.getByRole('listitem').getByRole('button').last().focus();
    await page.keyboard.press('Enter');
    await page
      .getByRole('complementary')
      .getByText(/it is in the binding chain/)
      .waitFor();
    await page.keyboard.press('Escape');
    await toggle.click();
    await list.waitFor({ state: 'detached' });
  });

  test('the keyboard asks what would help: gains come one by one, and it is stopped with what is known', async () => {
    const toggle = page.getByRole('button', { name: 'What would help?' });
    await toggle.focus();
    await page.keyboard.press('Enter');
    expect(await toggle.getAttribute('aria-expanded')).toBe('true');
    const gains = page.getByRole('list', { name: 'Helps that gain minutes' });
    await gains.getByRole('listitem').first().waitFor({ timeout: PATIENCE });
    expect(await gains.getByRole('listitem').first().textContent()).toMatch(/min sooner/);
    const stop = page.getByRole('button', { name: 'Stop with what is known' });
    // It may have had its answer already.
    if (await stop.isVisible()) {
      await stop.focus();
      await page.keyboard.press('Enter');
    }
    await stop.waitFor({ state: 'detached', timeout: PATIENCE });
    expect(await seriousFaults(page)).toEqual([]);
    await toggle.focus();
    await page.keyboard.press('Enter');
    await gains.waitFor({ state: 'detached' });
    expect(app.complaints).toEqual([]);
  });

  test('the running order is the same plan as a table', async () => {
    await page.getByRole('button', { name: 'Running order' }).click();
    expect(
      await page
        .getByRole('table', { name: /Running order/ })
        .getByRole('row')
        .count(),
    ).toBeGreaterThan(60);
    expect(await seriousFaults(page)).toEqual([]);
    await page.getByRole('button', { name: 'Lanes', exact: true }).click();
  });

  test.each([
    { name: 'a desktop in the light', width: 1440, height: 900, colorScheme: 'light' },
    { name: 'a desktop in the dark', width: 1440, height: 900, colorScheme: 'dark' },
    { name: 'a tablet', width: 1180, height: 820, colorScheme: 'light' },
    { name: 'a phone in the dark', width: 390, height: 844, colorScheme: 'dark' },
    { name: 'the narrowest screen', width: 320, height: 640, colorScheme: 'light' },
    { name: 'a projector', width: 3840, height: 2160, colorScheme: 'light' },
  ] as const)('has no serious fault of access, and scrolls one way only, on $name', async (screen) => {
    await page.setViewportSize(screen);
    await page.emulateMedia({ colorScheme: screen.colorScheme });
    await chart().waitFor();
    const over = () => page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    await expect.poll(over).toBeLessThanOrEqual(0);
    expect(await seriousFaults(page)).toEqual([]);
    await page.setViewportSize({ width: 1440, height: 900 });
    await page.emulateMedia({ colorScheme: 'light' });
  });

  test('another kitchen is another plan', async () => {
    const ovens = async () => (await chart().locator('[aria-label*="rack"]').count()) > 0;
    expect(await ovens()).toBe(true);
    await page.getByLabel('Kitchen', { exact: true }).selectOption('harbour-two-ovens');
    await page
      .getByText(/never under|no bound yet|Planning…|Best so far:/)
      .first()
      .waitFor();
    await planned();
    const names = await chart().locator('text.group').allTextContents();
    expect(names.filter((name) => /oven/i.test(name)).length).toBe(2);
  });

  test('compares two plans under each other on one clock', async () => {
    await page.getByRole('button', { name: 'Compare' }).click();
    await page.getByRole('table', { name: 'Figures of both plans' }).waitFor({ timeout: PATIENCE });
    const sliders = page.getByRole('slider');
    expect(await sliders.count()).toBe(2);
    await sliders.first().focus();
    await page.keyboard.press('PageUp');
    expect(await sliders.last().getAttribute('aria-valuetext')).toBe('10:15');
    expect(await seriousFaults(page)).toEqual([]);
  });

  test('a reload stays let in by the cookie alone', async () => {
    await page.reload();
    await planned();
    expect(await chart().getByRole('button').count()).toBeGreaterThan(45);
    expect(app.complaints).toEqual([]);
  });
});
