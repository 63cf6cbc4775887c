/** The account of a plan, in lines: what it uses, who bears it, and what sharing saved. */
import type { PlanAccount } from '../../../solver/accounts/plan-account.ts';
import type { Priced } from '../../../solver/accounts/amounts.ts';

const kWh = (wattHours: number): string => `${(wattHours / 1000).toFixed(2)} kWh`;
const litres = (ml: number): string => `${(ml / 1000).toFixed(1)} L`;

/** Energy, water, money and carbon in one line; what is nothing is left out. */
function amountText(amount: Priced, currency: string): string {
  const { electricWh, gasWh, waterMl, cost, carbonG } = amount;
  return [
    ...(electricWh === 0 && gasWh !== 0 ? [] : [kWh(electricWh)]),
    ...(gasWh === 0 ? [] : [`${kWh(gasWh)} of gas`]),
    ...(waterMl === 0 ? [] : [`${litres(waterMl)} of water`]),
    `${cost.toFixed(2)} ${currency}`,
    ...(carbonG === null ? [] : [`${Math.round(carbonG)} g CO₂`]),
  ].join(', ');
}

export function accountText(name: string, account: PlanAccount): string {
  const { currency } = account;
  const say = (amount: Priced): string => amountText(amount, currency);
  return [
    `${name}: ${say(account.total)}`,
    '',
    'By source',
    ...account.sources.map((source) => `  ${source.name}: ${say(source.used)}`),
    '',
    'By component, and cooked alone',
    ...account.components.map((each) => `  ${each.name}: ${say(each.shared)}; alone ${say(each.alone)}`),
    ...(account.box === null ? [] : ['', `Each of ${account.box.boxes} boxes: ${say(account.box.each)}`]),
    '',
    `Sharing saved ${say(account.saved)} of ${say(account.alone)}`,
    ...account.lines.map((line) => `  ${line.text}: ${say(line.saved)}`),
    '',
    ...(account.pools.length === 0
      ? []
      : [
          'In and over shared water',
          ...account.pools.map(({ step, text, mind }) => `  ${step}: ${text}.${mind === null ? '' : ` ${mind}`}`),
          '',
        ]),
    'Held against published figures',
    ...account.sanity.map(
      ({ name: what, value, yardstick, unit, plausible, source }) =>
        `  ${what}: ${value.toFixed(2)} to ${yardstick.toFixed(2)} ${unit}${plausible ? '' : ', which is far off'} (${source.cite})`,
    ),
    '',
    `Not counted: ${account.notCounted.join('; ')}.`,
  ].join('\n');
}
