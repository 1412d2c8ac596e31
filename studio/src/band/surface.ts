/** What is painted on. Given from outside, so that painting can be counted without a screen. */
export type Pen = CanvasRenderingContext2D;

export interface Surface {
  readonly canvas: HTMLCanvasElement;
  readonly pen: Pen;
}

/** `read`: its pixels are read back often. */
export type MakeSurface = (width: number, height: number, read?: boolean) => Surface;

export function screenSurface(width: number, height: number, read = false): Surface {
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, width);
  canvas.height = Math.max(1, height);
  const pen = canvas.getContext('2d', { willReadFrequently: read });
  if (!pen) throw new Error('the browser gives no canvas to paint on');
  return { canvas, pen };
}

/** Gives the memory back at once. */
export function release({ canvas }: Surface): void {
  canvas.width = 0;
  canvas.height = 0;
}
