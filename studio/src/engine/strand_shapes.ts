/** What the server answers of a strand; docs/openapi.yaml says each. */
import type { Finish } from './shapes';

export type ElementKind =
  'form' | 'bead' | 'spacer' | 'cap' | 'joiner' | 'clasp' | 'extender' | 'crimp' | 'cover' | 'knot' | 'ring';

/** Something that can be strung. */
export interface Element {
  readonly id: string;
  readonly name: string;
  /** The id as the layout's language writes it. */
  readonly written: string;
  readonly kind: ElementKind;
  readonly width_mm: number;
  readonly across_mm: number;
  readonly thickness_mm: number;
  readonly holes: number;
  readonly hole_mm: number;
  readonly apart_mm: number;
  readonly band: number | null;
  readonly form: number | null;
}

export interface SingleItem {
  readonly kind: 'single';
  readonly text: string;
  readonly times: number;
  readonly name: string;
  readonly both: boolean;
}
export interface GroupItem {
  readonly kind: 'group';
  readonly text: string;
  readonly times: number;
  readonly items: readonly Item[];
}
interface Run {
  readonly text: string;
  readonly group: string;
  readonly unit: readonly Item[];
  readonly from: number;
  readonly to: number | null;
}
export interface FillItem extends Run {
  readonly kind: 'fill';
}
export interface BetweenItem extends Run {
  readonly kind: 'between';
  readonly items: readonly Item[];
}
export interface MirrorItem {
  readonly kind: 'mirror';
  readonly text: string;
  readonly items: readonly Item[];
  readonly about: readonly Item[];
}
export type Item = SingleItem | GroupItem | FillItem | BetweenItem | MirrorItem;

export type CordKind = 'elastic' | 'wire' | 'braided' | 'leather';
export const cordKinds: readonly CordKind[] = ['elastic', 'wire', 'braided', 'leather'];

export interface Layout {
  readonly cords: 1 | 2;
  readonly cord: { readonly kind: CordKind; readonly diameter_mm: number };
  readonly closing: string | null;
  readonly parts: readonly Element[];
  readonly on_hand: readonly { readonly name: string; readonly count: number }[];
  readonly items: readonly Item[];
}
export interface LayoutAnswer {
  readonly text: string | null;
  readonly problem: { readonly message: string; readonly where: string } | null;
  readonly layout: Layout | null;
  readonly known: readonly Element[];
}

export interface RunCounts {
  readonly name: string;
  readonly counts: readonly number[];
}
export interface StrandChoice {
  readonly length_mm: number;
  readonly error_mm: number;
  readonly runs: readonly RunCounts[];
}
export interface StrandSize extends StrandChoice {
  readonly size: string;
  readonly worn: 'wrist' | 'neck' | 'length';
  readonly measure_mm: number;
  readonly ease_mm: number;
  readonly thickness_mm: number;
  readonly wanted_mm: number;
  readonly tolerance_mm: number;
  readonly closes: boolean;
  readonly shorter: StrandChoice | null;
  readonly longer: StrandChoice | null;
  readonly changes: readonly { readonly words: string }[];
  readonly girth_by_formula_mm: number;
  readonly girth_by_chain_mm: number | null;
  readonly worn_up_to_mm: number;
  readonly strung: readonly { readonly id: string; readonly name: string; readonly count: number }[];
  readonly cords: readonly {
    readonly cord: number;
    readonly strung_mm: number;
    readonly cut_mm: number;
    readonly allowances: readonly {
      readonly what: string;
      readonly count: number;
      readonly each_mm: number;
    }[];
  }[];
  readonly curve: {
    readonly outer_longer_mm: number;
    readonly extras: readonly {
      readonly after_piece: number;
      readonly bead: string;
      readonly count: number;
    }[];
    readonly faces: readonly { readonly piece: number; readonly hanging: string }[];
  };
  readonly findings: readonly {
    readonly code: string;
    readonly piece: number;
    readonly where: string;
    readonly found: string;
    readonly expected: string;
    readonly mend: string;
  }[];
}
export interface StrandAnswer {
  readonly title: string;
  readonly cords: number;
  readonly sizes: readonly StrandSize[];
}

export interface Body {
  readonly kind: string;
  readonly section: readonly (readonly [number, number])[];
  readonly length_mm: number;
  readonly together: number;
  readonly holes: readonly { readonly x_mm: number; readonly y_mm: number; readonly diameter_mm: number }[];
}
export interface PlacedElement extends Element {
  readonly look: { readonly colour: string; readonly finish: Finish } | null;
  readonly body: Body | null;
  readonly bead: {
    readonly kind: 'cylinder' | 'round';
    readonly diameter_mm: number;
    readonly length_mm: number;
    readonly hole_mm: number;
    readonly rim_mm: number;
  } | null;
}
export interface Placements {
  readonly size: string;
  readonly cord_mm: number;
  readonly cord_kind: CordKind;
  readonly elements: readonly PlacedElement[];
  /** Twelve numbers each: element, cord, middle, along, outwards, length. */
  readonly things: readonly (readonly number[])[];
  readonly cords: readonly (readonly number[])[];
}
