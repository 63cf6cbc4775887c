/** Pictograms of kitchen work, drawn with a pen of 1.5 in a box of 12 by 12: SVG path data. */
import type { Glyph } from './layout/identity.ts';

export const GLYPHS: Readonly<Record<Glyph, string>> = {
  wash: 'M1 4.2c1.7-2 3.3-2 5 0s3.3 2 5 0M1 8.2c1.7-2 3.3-2 5 0s3.3 2 5 0',
  water: 'M6 1.2C6 1.2 2.2 5.2 2.2 7.6a3.8 3.8 0 0 0 7.6 0C9.8 5.2 6 1.2 6 1.2Z',
  preheat: 'M6 1c2.6 2.6 4 4.3 4 6.6a4 4 0 0 1-8 0c0-1.6.9-2.7 1.8-3.4.2 1.3.8 1.9 1.4 1.9C6 4.700 5.400 3 6 1Z',
  packing: 'M1.400 4 6 1.800 10.600 4v4.800L6 11 1.400 8.800ZM1.400 4 6 6.200 10.600 4M6 6.200V11',
  clearing: 'M1.800 6.500 4.800 9.600 10.300 2.600',
};
