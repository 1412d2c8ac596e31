/** What is asked of the engine for a picture on a band. */
import type { Where } from './faces';

export interface PictureWish {
  readonly where: Where;
  readonly fit: 'fill' | 'contain' | 'stretch';
  readonly colours: number;
  /** Which beads it may be made of. */
  readonly stock: 'legend' | 'own';
  readonly turn: number;
  readonly mirror: boolean;
  readonly detail: boolean;
  readonly mix: boolean;
  readonly smooth: boolean;
}

export const firstWish = (where: Where, colours: number): PictureWish => ({
  where,
  fit: 'fill',
  colours,
  stock: 'legend',
  turn: 0,
  mirror: false,
  detail: true,
  mix: false,
  smooth: false,
});

/** The body for /api/projects/ID/picture. */
export const pictureRequest = (picture: string, name: string, wish: PictureWish) => ({
  picture,
  name,
  stock: wish.stock,
  fit: wish.fit,
  colours: wish.colours,
  ...(wish.where === 'front' || wish.where === 'back' ? { face: wish.where } : {}),
  ...(wish.turn === 0 ? {} : { turn: wish.turn }),
  ...(wish.mirror ? { mirror: true } : {}),
  ...(wish.detail ? { detail: true } : {}),
  ...(wish.mix ? { mix: true } : {}),
  ...(wish.smooth ? { smooth: true } : {}),
});
