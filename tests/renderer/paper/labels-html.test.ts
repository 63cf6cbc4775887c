// @vitest-environment happy-dom
/** The page of labels. */
import { describe, expect, test } from 'vitest';
import { labelsHtml } from '../../../renderer/paper/labels-html.ts';
import { boxLabels, LABEL_CAUTION } from '../../../solver/boxes/labels.ts';
import { supper } from '../../support/supper.ts';

const labels = boxLabels(supper, () => '2026-03-08');
function page(changed = labels): Document {
  return new DOMParser().parseFromString(labelsHtml('Supper & <more>', changed), 'text/html');
}
const words = (element: Element | null | undefined): string => element?.textContent ?? '';

describe('the page of labels', () => {
  test('has one label for each box, with whose it is and which of them', () => {
    expect([...page().querySelectorAll('article h2')].map(words)).toEqual([
      'Eve · 1 of 2',
      'Eve · 2 of 2',
      'For anybody · 1 of 2',
      'For anybody · 2 of 2',
    ]);
  });

  // source: Regulation (EU) No 1169/2011, Article 21 (1) (b): allergens are emphasised by a typeset that sets them apart.
  test('stresses the allergens of a box among its words', () => {
    const [, , other] = page().querySelectorAll('article');
    expect([...other!.querySelectorAll('strong')].map(words)).toContain('cereals containing gluten');
  });

  test('says of a box what it is kept free of, when to use it by and how to heat it', () => {
    const first = words(page().querySelector('article'));
    expect(first).toMatch(/Kept free of gluten/);
    expect(first).toMatch(/use by 2026-03-10/);
    expect(first).toMatch(/75 °C/);
  });

  test('says in a frame whom a box is not for', () => {
    expect(page().querySelector('.stop')).toBeNull();
    const wrong = page(labels.map((label) => ({ ...label, notFor: label.eater === null ? [] : ['gluten'] })));
    expect(words(wrong.querySelector('.stop'))).toBe('Not for Eve: gluten');
  });

  test('writes names as text, runs nothing and fetches nothing', () => {
    expect(words(page().querySelector('h1'))).toBe('Supper & <more>: 4 boxes');
    expect(page().querySelectorAll('script, link, img, more')).toHaveLength(0);
  });

  test('ends with the caution', () => {
    expect(words(page().querySelector('footer'))).toBe(LABEL_CAUTION);
  });
});
