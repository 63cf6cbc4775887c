/** The labels of a plan's boxes as a page to print and cut: HTML of its own, with no script and nothing to fetch. */
import { LABEL_CAUTION, markName, type AllergenList, type BoxLabel } from '../../solver/boxes/labels.ts';
import { escape } from './svg-tags.ts';

/** Two labels across on A4 or letter paper; a label is never cut by the end of a page. Black on white, to be read without colour. */
const STYLE = `
@page { margin: 10mm }
body { margin: 0; font: 10pt/1.35 'Sofia Sans', 'Segoe UI', 'Noto Sans', sans-serif; color: #000; background: #fff }
main { display: grid; grid-template-columns: repeat(auto-fill, minmax(80mm, 1fr)); gap: 4mm }
article { border: 0.4mm solid #000; padding: 3mm; break-inside: avoid }
h1 { margin: 0 0 3mm; font-size: 13pt }
h2 { margin: 0; font-size: 12pt }
p { margin: 1mm 0 0 }
.stop { border: 0.8mm solid #000; padding: 1mm 2mm; font-weight: 700 }
footer { margin-top: 4mm }
`;

const strong = (text: string): string => `<strong>${escape(text)}</strong>`;

function allergens({ eu, us }: AllergenList): string {
  const names = us.length === 0 ? '' : ` (US list: ${us.map((each) => escape(each.replace('-', ' '))).join(', ')})`;
  return `${eu.map(strong).join(', ')}${names}`;
}

function article(label: BoxLabel): string {
  const { eater, number, of, dishes, massG, contains, mayHaveMet, keptFree, notFor } = label;
  const lines = [
    dishes.map(({ name, massG: mass }) => escape(mass === null ? name : `${name} ${mass} g`)).join(', '),
    contains.eu.length === 0 ? 'Contains none of the fourteen allergens' : `Contains ${allergens(contains)}`,
    ...(mayHaveMet.eu.length === 0 ? [] : [`May have met ${allergens(mayHaveMet)}`]),
    ...(keptFree.length === 0 ? [] : [`Kept free of ${keptFree.map(markName).map(strong).join(', ')}`]),
    `Cooked ${label.cookedOn} · use by ${strong(label.useBy)}${label.frozenUseBy === null ? '' : ` · from the freezer by ${label.frozenUseBy}`}${massG === null ? '' : ` · ${massG} g`}`,
    escape(label.reheat),
  ].map((line) => `<p>${line}</p>`);
  const stop =
    notFor.length === 0
      ? ''
      : `<p class="stop">Not for ${escape(eater!.name)}: ${notFor.map(markName).map(escape).join(', ')}</p>`;
  return `<article><h2>${escape(eater?.name ?? 'For anybody')} · ${number} of ${of}</h2>${stop}${lines.join('')}</article>`;
}

/**
 * A page of labels, one for each box, in the order of filling.
 *
 * @param name of the plan, above the labels
 */
export function labelsHtml(name: string, labels: readonly BoxLabel[]): string {
  return `<!doctype html>
<html lang="en">
<head><meta charset="utf-8"><title>${escape(name)}: labels</title><style>${STYLE}</style></head>
<body>
<h1>${escape(name)}: ${labels.length} boxes</h1>
<main>
${labels.map(article).join('\n')}
</main>
<footer>${escape(LABEL_CAUTION)}</footer>
</body>
</html>
`;
}
