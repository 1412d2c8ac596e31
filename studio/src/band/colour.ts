/** Just enough colour for painting beads on the screen. What colours are told by is the engine's. */
export interface Rgb {
  readonly red: number;
  readonly green: number;
  readonly blue: number;
}

export function rgbOf(hex: string): Rgb {
  const match = /^#([0-9a-f]{6})$/i.exec(hex.trim());
  const value = match?.[1] ? parseInt(match[1], 16) : 0x808080;
  return { red: value >> 16, green: (value >> 8) & 255, blue: value & 255 };
}

/** From one colour to another, `share` of the way. */
export function mixed(from: Rgb, to: Rgb, share: number): Rgb {
  const part = (a: number, b: number) => Math.round(a + (b - a) * share);
  return {
    red: part(from.red, to.red),
    green: part(from.green, to.green),
    blue: part(from.blue, to.blue),
  };
}

export const black: Rgb = { red: 0, green: 0, blue: 0 };
export const white: Rgb = { red: 255, green: 255, blue: 255 };

export const css = ({ red, green, blue }: Rgb, alpha = 1): string =>
  alpha === 1 ? `rgb(${red} ${green} ${blue})` : `rgb(${red} ${green} ${blue} / ${alpha})`;

/** Relative luminance, WCAG 2.2. */
export function luminance({ red, green, blue }: Rgb): number {
  const linear = (part: number) => {
    const share = part / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  };
  return 0.2126 * linear(red) + 0.7152 * linear(green) + 0.0722 * linear(blue);
}

/** Black or white, whichever stands out more: where both contrasts are equal, the luminance is the root of 0.05 * 1.05, less 0.05. */
export const inkOn = (colour: Rgb): Rgb =>
  luminance(colour) > Math.sqrt(0.05 * 1.05) - 0.05 ? black : white;
