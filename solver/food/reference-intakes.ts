/** What an adult is reckoned to need a day, and the energy of nutrients, as labels in the European Union count them. */
import type { Source } from '../source.ts';

/** Nutrients of a nutrition declaration, in its order; g. Carbohydrate is without fibre, salt is sodium × 2.5. */
export const DECLARED = ['fat', 'saturates', 'carbohydrate', 'sugars', 'fibre', 'protein', 'salt'] as const;
export type Declared = (typeof DECLARED)[number];

export const REFERENCE_INTAKES: Source = {
  standing: 'published',
  cite: 'Regulation (EU) No 1169/2011, Annex XIII, part B: reference intakes of an average adult',
  region: 'EU',
};
/** A day of an average adult: kJ, kcal, g. The regulation gives none for fibre. */
export const REFERENCE_INTAKE = {
  energyKJ: 8400,
  energyKcal: 2000,
  fat: 70,
  saturates: 20,
  carbohydrate: 260,
  sugars: 90,
  protein: 50,
  salt: 6,
} as const;

export const ENERGY_FACTORS: Source = {
  standing: 'published',
  cite: 'Regulation (EU) No 1169/2011, Annex XIV: conversion factors for energy',
  region: 'EU',
};
/** Energy of 1 g. Of the others in the Annex (polyols, alcohol, organic acids) the table of foods has no figures. */
export const ENERGY_OF: Readonly<Record<'carbohydrate' | 'protein' | 'fat' | 'fibre', { kJ: number; kcal: number }>> = {
  carbohydrate: { kJ: 17, kcal: 4 },
  protein: { kJ: 17, kcal: 4 },
  fat: { kJ: 37, kcal: 9 },
  fibre: { kJ: 8, kcal: 2 },
};

/** Salt that a mass of sodium counts as. @source Regulation (EU) No 1169/2011, Annex I, point 11 */
export const SALT_PER_SODIUM = 2.5;
