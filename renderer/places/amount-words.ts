/** Energy, water, money and carbon of an account, in words. */
import type { Priced } from '../../solver/accounts/amounts.ts';

export const kWhWords = (wattHours: number): string => `${signed(wattHours / 1000, 2)} kWh`;
export const litreWords = (ml: number): string => `${signed(ml / 1000, 1)} L`;
export const moneyWords = (cost: number, currency: string): string => `${signed(cost, 2)} ${currency}`;
export const carbonWords = (grams: number): string => `${signed(grams, 0)} g CO₂`;

const signed = (value: number, digits: number): string => {
  const text = Math.abs(value).toFixed(digits);
  return value < 0 && Number(text) !== 0 ? `−${text}` : text;
};

/** An amount in one line; what is nothing is left out. */
export function amountLine(amount: Priced, currency: string): string {
  const { wattHours, waterMl, cost, carbonG } = amount;
  return [
    kWhWords(wattHours),
    ...(waterMl === 0 ? [] : [`${litreWords(waterMl)} water`]),
    moneyWords(cost, currency),
    ...(carbonG === null ? [] : [carbonWords(carbonG)]),
  ].join(', ');
}
