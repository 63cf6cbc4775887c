/** What the browser tests ask of a page. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

/** Planning takes a few seconds of effort, more on a busy machine; ms. */
export const PATIENCE = 90_000;

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** Faults that axe finds serious or critical. */
export async function seriousFaults(page: Page): Promise<readonly string[]> {
  await page.evaluate(AXE);
  return page.evaluate(async () => {
    const { axe } = window as unknown as { axe: { run: (where: Document) => Promise<{ violations: Violation[] }> } };
    interface Violation {
      readonly id: string;
      readonly impact: string;
      readonly nodes: readonly { readonly html: string }[];
    }
    const { violations } = await axe.run(document);
    return violations
      .filter((each) => each.impact === 'serious' || each.impact === 'critical')
      .map((each) => `${each.id} (${each.nodes.length}): ${each.nodes[0]?.html.slice(0, 160)}`);
  });
}

/** px by which the page is wider than the window; 0 or less: it scrolls one way only. */
export const tooWide = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/** A plan is there and the search has ended, so that no better plan moves what a test holds: it is stopped once it has a plan. */
export async function settledPlan(page: Page): Promise<void> {
  const keep = page.getByRole('button', { name: 'Stop and keep this plan' });
  await keep
    .or(page.getByText(/Passed the independent check/))
    .first()
    .waitFor({ timeout: PATIENCE });
  if (await keep.isVisible()) await keep.click().catch(() => undefined);
  await page
    .getByRole('button', { name: /^Stop( and keep this plan)?$/ })
    .waitFor({ state: 'detached', timeout: PATIENCE });
  await page.getByText(/Passed the independent check/).waitFor({ timeout: PATIENCE });
}
