import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { DARK, LIGHT, type Palette } from '../../../renderer/theme/palette.ts';

type Rgb = readonly [number, number, number];

/** Linear light of an sRGB colour. */
function linear(hex: string): Rgb {
  const of = (at: number): number => {
    const value = parseInt(hex.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  };
  return [of(1), of(3), of(5)];
}

/** source: WCAG 2.2, relative luminance and contrast ratio. */
function contrast(a: string, b: string): number {
  const luminance = (hex: string): number => {
    const [r, g, blue] = linear(hex);
    return 0.2126 * r + 0.7152 * g + 0.0722 * blue;
  };
  const [dark, light] = [luminance(a), luminance(b)].sort((x, y) => x - y) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

/** source: Machado, Oliveira and Fernandes, "A physiologically-based model for simulation of color vision deficiency", 2009, severity 1. */
const EYES: Readonly<Record<string, readonly Rgb[]>> = {
  usual: [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  protan: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deutan: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
};

/** source: Ottosson, "A perceptual color space for image processing" (OKLab), 2020. */
function oklab([r, g, b]: Rgb): Rgb {
  const l = Math.cbrt(0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * b);
  const m = Math.cbrt(0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * b);
  const s = Math.cbrt(0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * b);
  return [
    0.2104542553 * l + 0.793617785 * m - 0.0040720468 * s,
    1.9779984951 * l - 2.428592205 * m + 0.4505937099 * s,
    0.0259040371 * l + 0.7827717662 * m - 0.808675766 * s,
  ];
}

function seenBy(eye: string, hex: string): Rgb {
  const colour = linear(hex);
  const seen = EYES[eye]!.map((row) => Math.max(0, row[0] * colour[0] + row[1] * colour[1] + row[2] * colour[2]));
  return oklab(seen as unknown as Rgb);
}

describe.each([
  { name: 'light', palette: LIGHT },
  { name: 'dark', palette: DARK },
])('the $name palette', ({ palette }: { palette: Palette }) => {
  // source: WCAG 2.2, success criterion 1.4.3: 4.5 to 1 for text.
  test('text is readable on every ground it stands on', () => {
    for (const tone of palette.tones) {
      expect(contrast(tone, palette.onTone), `letter on ${tone}`).toBeGreaterThanOrEqual(4.5);
      expect(contrast(tone, palette.paper), `${tone} on paper`).toBeGreaterThanOrEqual(4.5);
      expect(contrast(tone, palette.card), `${tone} on a card`).toBeGreaterThanOrEqual(4.5);
    }
    for (const text of [palette.ink, palette.soft, palette.heatText, palette.waterText, palette.limit, palette.work]) {
      expect(contrast(text, palette.paper), `${text} on paper`).toBeGreaterThanOrEqual(4.5);
      expect(contrast(text, palette.card), `${text} on a card`).toBeGreaterThanOrEqual(4.5);
    }
    expect(contrast(palette.ink, palette.workFill)).toBeGreaterThanOrEqual(4.5);
  });

  test.each(Object.keys(EYES))('dishes differ to %s eyes', (eye) => {
    const seen = palette.tones.map((tone) => seenBy(eye, tone));
    for (const [index, a] of seen.entries()) {
      for (const b of seen.slice(index + 1)) {
        expect(Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2])).toBeGreaterThan(0.08);
      }
    }
  });

  test('is the one the window uses', () => {
    const css = readFileSync(new URL('../../../renderer/theme/tokens.css', import.meta.url), 'utf8');
    const kebab = (name: string): string => name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
    for (const [name, colour] of Object.entries(palette)) {
      if (typeof colour === 'string') expect(css).toContain(`--${kebab(name)}: ${colour};`);
    }
    for (const [index, tone] of palette.tones.entries()) expect(css).toContain(`--tone-${index + 1}: ${tone};`);
  });
});
