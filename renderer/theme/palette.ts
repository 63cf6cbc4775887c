/** The colours of paper charts; `tokens.css` has the same for the window, and a test holds the two together. */

export interface Palette {
  readonly paper: string;
  readonly card: string;
  readonly ink: string;
  readonly soft: string;
  readonly rule: string;
  readonly hair: string;
  readonly heat: string;
  readonly heatText: string;
  readonly water: string;
  readonly waterText: string;
  readonly work: string;
  /** Ground of hands-on work that belongs to no dish; its text is ink. */
  readonly workFill: string;
  readonly limit: string;
  readonly onTone: string;
  /** Tones of components, from 1 on. Told apart also by eyes that see no red or no green; the letter says the same. */
  readonly tones: readonly string[];
}

export const LIGHT: Palette = {
  paper: '#fbf7f0',
  card: '#fffdf9',
  ink: '#2a2622',
  soft: '#665d53',
  rule: '#cdc2b1',
  hair: '#ece4d7',
  heat: '#d9772b',
  heatText: '#8f4510',
  water: '#4f95b8',
  waterText: '#1d5a7a',
  work: '#6b645b',
  workFill: '#ddd4c6',
  limit: '#a3242a',
  onTone: '#ffffff',
  tones: ['#874502', '#2f7b7f', '#5c1877', '#896e05', '#4471b5', '#791409', '#18664a', '#4847af', '#135b79', '#5c2f48'],
};

export const DARK: Palette = {
  paper: '#1b1916',
  card: '#24211d',
  ink: '#f3ece1',
  soft: '#b5aa9c',
  rule: '#4b443b',
  hair: '#2e2a25',
  heat: '#e08a45',
  heatText: '#f0a868',
  water: '#5ba7cc',
  waterText: '#92cbe6',
  work: '#aaa196',
  workFill: '#453f37',
  limit: '#f08a86',
  onTone: '#1b1916',
  tones: ['#e59a81', '#3ec6ba', '#a584b4', '#eabf5e', '#80c3ff', '#d0737b', '#badaaf', '#879bee', '#65e7ef', '#b7972f'],
};
