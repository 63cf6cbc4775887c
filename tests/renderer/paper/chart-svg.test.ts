import { describe, expect, test } from 'vitest';
import { allBars, chartGroups } from '../../../renderer/chart/layout/chart-groups.ts';
import { chartSvg } from '../../../renderer/paper/chart-svg.ts';
import { supper } from '../../support/supper.ts';

/** Names of elements left open, and closing tags that close nothing; null where every tag is well nested. */
function nestingFault(svg: string): string | null {
  const open: string[] = [];
  for (const [, closing, name, , empty] of svg.matchAll(/<(\/?)([a-zA-Z]+)((?:\s[\w:-]+="[^"<]*")*)\s*(\/?)>/g)) {
    if (closing === '/') {
      if (open.pop() !== name) return `</${name}>`;
    } else if (empty !== '/') open.push(name!);
  }
  return open.length === 0 ? null : open.join(' > ');
}

describe('the chart as one SVG string', () => {
  const svg = chartSvg(supper, { everything: true });

  test('is well formed, with no value missing', () => {
    expect(nestingFault(svg)).toBeNull();
    expect(svg.match(/[<>]/g)!.length % 2).toBe(0);
    expect(svg).not.toMatch(/NaN|undefined|null|Infinity/);
    expect(svg).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg" viewBox="0 0 1600 \d+"/);
  });

  test('says every bar in a title', () => {
    for (const bar of allBars(chartGroups(supper, true))) expect(svg).toContain(`<title>${bar.words}`);
  });

  test('has the name, the finish, the caution, and no script', () => {
    expect(svg).toContain(`>${supper.name}</text>`);
    expect(svg).toContain('finish 11:06');
    expect(svg).toContain('A probe thermometer decides');
    expect(svg).not.toMatch(/<script|href=|on\w+=/);
  });

  test('escapes what documents say', () => {
    const odd = chartSvg({ ...supper, name: 'Fish & <chips> "now"' });
    expect(odd).toContain('Fish &amp; &lt;chips&gt; &quot;now&quot;');
    expect(nestingFault(odd)).toBeNull();
  });

  test('draws the binding chain only when asked for, well formed', () => {
    const { start: from, end: until, id, name } = supper.steps.find((step) => step.id === 'chicken/roast')!;
    const chain = [{ step: id, name, from, until, why: 'heat' as const, because: 'waits for the oven' }];
    const plan = { ...supper, bindingChain: chain };
    const why = chartSvg(plan, { why: true });
    expect(chartSvg(plan)).toBe(chartSvg(supper));
    expect(nestingFault(why)).toBeNull();
    expect(why.match(/<rect/g)!.length - chartSvg(plan).match(/<rect/g)!.length).toBe(2);
  });

  test('is the same each time, and another in the dark', () => {
    expect(chartSvg(supper)).toBe(chartSvg(supper));
    expect(chartSvg(supper, { dark: true })).toContain('#1b1916');
  });
});
