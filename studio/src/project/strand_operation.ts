/** What can be done to a strand. src/project/operation.hpp says what each takes. */
import type { Strand, WearerSize } from '../engine/shapes';
import type { CordKind } from '../engine/strand_shapes';

/** Positions from the outermost list inwards: [3], or [3, 0] for the first in the brackets of the fourth. */
export type Path = readonly number[];

export type StrandOperation =
  | { readonly do: 'begin_strand'; readonly worn?: Strand['worn'] }
  | {
      readonly do: 'change_strand';
      readonly layout?: readonly string[];
      readonly worn?: Strand['worn'];
      readonly ease_mm?: number | null;
      readonly lean?: number | null;
      readonly tolerance_mm?: number | null;
      readonly sizes?: readonly WearerSize[] | null;
    }
  | {
      readonly do: 'change_cords';
      readonly cords?: 1 | 2;
      readonly kind?: CordKind;
      readonly diameter_mm?: number;
    }
  | { readonly do: 'close_strand'; readonly with?: string; readonly part?: string }
  | { readonly do: 'add_element'; readonly item: string; readonly at?: Path; readonly part?: string }
  | { readonly do: 'change_element'; readonly at: Path; readonly item: string; readonly part?: string }
  | { readonly do: 'move_element'; readonly from: Path; readonly to: Path }
  | { readonly do: 'duplicate_element' | 'remove_element'; readonly at: Path };
