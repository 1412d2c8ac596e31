/** What `supplies` answers; docs/supplies.md explains it. */
import type { Finish } from './shapes';

/** Minor units are hundredths. */
export interface Money {
  readonly minor: number;
  readonly currency: string;
}
export interface BoughtPack {
  readonly packs: number;
  readonly holds: number;
  readonly price: Money | null;
  readonly supplier: string;
  readonly order_code: string;
}
/** Amounts in grams, metres or pieces. */
export interface Purchase {
  readonly needed: number;
  readonly on_hand: number;
  readonly short: number;
  readonly buy: readonly BoughtPack[];
  readonly still_short: number;
  readonly left_over: number;
  readonly cost: Money | null;
}
export interface BeadLine {
  readonly letter: string;
  readonly name: string;
  readonly size: string;
  readonly count: number;
  readonly grams: number;
  readonly packs: number | null;
  readonly cost: Money | null;
  readonly finish: Finish;
  readonly colour: string;
  readonly code: string;
  readonly purchase: Purchase;
}
export interface GoodsLine {
  readonly name: string;
  readonly count: number;
  readonly unit: string;
  readonly code?: string;
  readonly purchase?: Purchase;
}
export interface CostPart {
  readonly lines: readonly { readonly what: string; readonly how: string; readonly minor: number }[];
  readonly minor: number;
}
export interface Rule {
  readonly name?: string;
  readonly materials?: number;
  readonly labour?: number;
  readonly overhead?: number;
  readonly wholesale?: number;
  readonly retail?: number;
  readonly retail_to?: number;
}
/** The costing that counts, with its usual figures where the project has none. */
export interface Rates {
  readonly currency: string;
  readonly hour_minor: number;
  readonly beads_a_day: number;
  readonly minutes_a_day: number;
  readonly finishing_minutes: number;
  readonly assembly_minutes: number;
  readonly other_materials_minor: number;
  readonly waste_percent: number;
  readonly overhead_percent: number;
  readonly overhead_minor: number;
  readonly rule?: Rule;
  readonly technique_percent?: Readonly<Record<string, number>>;
}
export interface CostSheet {
  readonly currency: string;
  readonly materials: CostPart;
  readonly labour: CostPart;
  readonly overhead: CostPart;
  readonly cost: number;
  readonly prices: readonly {
    readonly rule: string;
    readonly how: string;
    readonly wholesale: number | null;
    readonly retail: number | null;
    readonly retail_to: number | null;
  }[];
  readonly unpriced: readonly string[];
  readonly rates: Rates;
}
export interface CostDifference {
  readonly what: string;
  readonly before: number | null;
  readonly after: number | null;
  readonly saved: number;
}
export interface Kit {
  readonly title: string;
  readonly bags: readonly {
    readonly letter: string;
    readonly name: string;
    readonly size: string;
    readonly colour: string;
    readonly packed: number;
    readonly grams: number;
  }[];
  readonly forms: readonly { readonly name: string; readonly count: number; readonly unit: string }[];
  readonly thread: {
    readonly name: string;
    readonly lengths: readonly { readonly length_mm: number; readonly count: number }[];
  };
  readonly findings: readonly { readonly name: string; readonly count: number; readonly unit: string }[];
}
export interface SuppliesAnswer {
  readonly kits: number;
  readonly beads: readonly BeadLine[];
  readonly forms: readonly GoodsLine[];
  readonly threads: readonly GoodsLine[];
  readonly findings: readonly GoodsLine[];
  readonly sizes: readonly string[];
  readonly tools: readonly string[];
  readonly total: Money | null;
  readonly short?: readonly {
    readonly letter: string;
    readonly name: string;
    readonly substitutes: readonly {
      readonly code: string;
      readonly name: string;
      readonly colour: string;
      readonly difference: number;
      readonly on_hand: number;
      readonly covers: boolean;
    }[];
  }[];
  readonly price?: CostSheet;
  readonly pick?: readonly Kit[];
  readonly swaps?: readonly {
    readonly letter: string;
    readonly by: string;
    readonly packs: readonly CostDifference[];
    readonly packs_saved: number;
    readonly kit: readonly CostDifference[];
    readonly kit_saved: number;
    readonly unpriced: readonly string[];
  }[];
}
