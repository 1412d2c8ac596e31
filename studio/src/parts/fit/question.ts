/** What is asked of a fit (docs/openapi.yaml, /api/fit). */
import { address, type Query } from '../../engine/api';
import type { Use } from '../../engine/shapes';

export interface FitQuestion {
  /** As written; nothing is asked while a size is missing. */
  readonly form: string | undefined;
  readonly bead: string;
  readonly use: Use;
  readonly thread?: string | undefined;
  readonly columns?: number | undefined;
  /** COLUMNxEDGE in mm. */
  readonly gauge?: string | undefined;
  readonly swatch?: string | undefined;
  readonly finished?: string | undefined;
  readonly stitch?: 'peyote' | 'square' | undefined;
  readonly reveal?: string | undefined;
}

const asked = (path: readonly string[], question: FitQuestion): string | undefined =>
  question.form === undefined ? undefined : address(path, { ...question } satisfies Query);

export const fitAddress = (question: FitQuestion) => asked(['fit'], question);
export const sectionAddress = (question: FitQuestion) => asked(['fit', 'section'], question);
