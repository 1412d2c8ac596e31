/**
 * The whole band at a pixel for each half bead (each side of a square in right-angle weave): what is seen from far off, what fills in where
 * beads are not painted yet, and what the overview shows.
 */
import { noBead } from './cells';
import { css, type Rgb } from './colour';
import { holdsBead, type Lattice, shiftOf } from './lattice';
import { type MakeSurface, type Pen, release, type Surface } from './surface';

export class Blocks {
  readonly #surface: Surface;
  readonly #squares: boolean;

  constructor(
    make: MakeSurface,
    readonly lattice: Lattice,
    private readonly colours: readonly Rgb[],
  ) {
    this.#squares = lattice.holes === 'squares';
    this.#surface = make(lattice.columns, this.#squares ? lattice.edge : 2 * lattice.edge + 1);
  }

  get canvas(): HTMLCanvasElement {
    return this.#surface.canvas;
  }

  setAll(beads: Uint16Array): void {
    const { columns, edge } = this.lattice;
    const { pen } = this.#surface;
    const image = pen.createImageData(columns, this.#squares ? edge : 2 * edge + 1);
    const put = (column: number, line: number, { red, green, blue }: Rgb) => {
      const at = 4 * (line * columns + column);
      image.data[at] = red;
      image.data[at + 1] = green;
      image.data[at + 2] = blue;
      image.data[at + 3] = 255;
    };
    for (let step = 0; step < edge; ++step)
      for (let column = 0; column < columns; ++column) {
        const bead = beads[step * columns + column] ?? noBead;
        const colour = this.colours[bead];
        if (bead === noBead || !colour || !holdsBead(this.lattice, { column, step })) continue;
        const line = this.#line(column, step);
        put(column, line, colour);
        if (!this.#squares) put(column, line + 1, colour);
      }
    pen.putImageData(image, 0, 0);
  }

  setOne(column: number, step: number, bead: number): void {
    const { pen } = this.#surface;
    const line = this.#line(column, step);
    const height = this.#squares ? 1 : 2;
    const colour = this.colours[bead];
    pen.clearRect(column, line, 1, height);
    if (bead === noBead || !colour || !holdsBead(this.lattice, { column, step })) return;
    pen.fillStyle = css(colour);
    pen.fillRect(column, line, 1, height);
  }

  /** Draws it with the band's upper left corner at (x, y), `scale` pixels a millimetre. */
  draw(pen: Pen, x: number, y: number, scale: number): void {
    const { columns, edge, columnMm, edgeMm } = this.lattice;
    const { width, height } = this.canvas;
    if (this.#squares) {
      // A pixel is half a unit and lies about its bead's middle; see boxOf.
      pen.drawImage(
        this.canvas,
        x - 0.1 * columnMm * scale,
        y - 0.1 * edgeMm * scale,
        (columns / 2) * columnMm * scale,
        (edge / 2) * edgeMm * scale,
      );
      return;
    }
    pen.drawImage(
      this.canvas,
      0,
      0,
      width,
      height,
      x,
      y,
      columns * columnMm * scale,
      (edge + 0.5) * edgeMm * scale,
    );
  }

  blankImage(width: number, height: number): ImageData {
    return this.#surface.pen.createImageData(width, height);
  }

  dispose(): void {
    release(this.#surface);
  }

  #line(column: number, step: number): number {
    return this.#squares ? step : 2 * step + shiftOf(this.lattice, column);
  }
}
