/** The catalogue picture that was made last, kept while other stops are visited. */
import { address } from '../../engine/api';
import { Work } from '../../engine/job.svelte';

export const views = ['table', 'flat', 'worn'] as const;
export const lights = ['tent', 'window'] as const;
export const grounds = ['paper', 'linen', 'none'] as const;
/** Pixels, as the server reads them. */
export const sizes = { wide: '1600x1200', cover: 'a4', square: 'square' } as const;
/** Samples a pixel: four times as many take four times as long and halve the noise. */
export const qualities = { quick: 6, good: 24, fine: 96 } as const;

export interface PictureWish {
  /** A band's name; the whole piece where it is empty. */
  readonly band: string;
  readonly view: (typeof views)[number];
  readonly light: (typeof lights)[number];
  readonly ground: (typeof grounds)[number];
  readonly size: keyof typeof sizes;
  readonly quality: keyof typeof qualities;
}

export class Picturing {
  readonly work = new Work();
  wish = $state.raw<PictureWish>({
    band: '',
    view: 'table',
    light: 'tent',
    ground: 'paper',
    size: 'wide',
    quality: 'quick',
  });
  #made = $state.raw<{ readonly revision: number; readonly wish: PictureWish }>();

  constructor(readonly project: string) {}

  /** What the picture shows; undefined where there is none. */
  get made(): { readonly revision: number; readonly wish: PictureWish } | undefined {
    return this.#made;
  }

  async make(revision: number): Promise<void> {
    const wish = this.wish;
    this.#made = { revision, wish };
    await this.work.start(address(['projects', this.project, 'render']), {
      ...(wish.band ? { band: wish.band } : {}),
      view: wish.view,
      light: wish.light,
      ground: wish.ground,
      size: sizes[wish.size],
      samples: qualities[wish.quality],
    });
  }
}

const picturings: Record<string, Picturing> = {};

/** One for each project, as long as the page is open. */
export function picturingOf(project: string): Picturing {
  return (picturings[project] ??= new Picturing(project));
}
