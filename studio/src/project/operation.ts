/** What can be done to a project. src/project/operation.hpp says what each takes. */
import type { BandHead, Form, LegendEntry, ProjectHead, SymmetryName } from '../engine/shapes';
import type { StrandOperation } from './strand_operation';

type Place = readonly [column: number, step: number];
/** Also drawn in the images of these symmetries. */
interface Mirrored {
  readonly mirror?: readonly SymmetryName[];
}
interface OnBand {
  readonly band: number;
}
/** null takes a field away. */
type Changes<T> = { readonly [Name in keyof T]?: T[Name] | null };

export type Operation =
  | StrandOperation
  | ({ readonly do: 'set'; readonly cells: readonly Place[]; readonly letter: string } & OnBand & Mirrored)
  | ({ readonly do: 'line'; readonly from: Place; readonly to: Place; readonly letter: string } & OnBand &
      Mirrored)
  | ({
      readonly do: 'rectangle' | 'ellipse';
      readonly from: Place;
      readonly to: Place;
      readonly letter: string;
      readonly filled?: boolean;
    } & OnBand &
      Mirrored)
  | ({ readonly do: 'fill'; readonly at: Place; readonly letter: string } & OnBand & Mirrored)
  | { readonly do: 'replace_letter'; readonly from: string; readonly to: string; readonly band?: number }
  | ({ readonly do: 'flip'; readonly symmetry: SymmetryName } & OnBand)
  | ({ readonly do: 'shift'; readonly steps?: number; readonly columns?: number } & OnBand)
  | ({
      readonly do: 'insert_steps' | 'insert_columns';
      readonly at: number;
      readonly count: number;
      readonly letter: string;
    } & OnBand)
  | ({ readonly do: 'delete_steps' | 'delete_columns'; readonly at: number; readonly count: number } & OnBand)
  | ({
      readonly do: 'stamp';
      readonly at: Place;
      readonly from_band: number;
      readonly from: Place;
      readonly to: Place;
      readonly leave?: string;
    } & OnBand &
      Mirrored)
  | ({
      readonly do: 'press';
      readonly at: Place;
      readonly lines: readonly string[];
      readonly shift: number;
    } & OnBand)
  | ({ readonly do: 'repeat'; readonly from: Place; readonly to: Place } & OnBand)
  | ({
      readonly do: 'text';
      readonly text: string;
      readonly letter: string;
      readonly at?: Place;
      readonly columns?: number;
      readonly steps?: number;
      readonly alphabet?: 'five' | 'three';
      readonly running?: 'across' | 'down' | 'up';
    } & OnBand)
  | { readonly do: 'add_legend_entry'; readonly entry: Partial<LegendEntry>; readonly at?: number }
  | { readonly do: 'change_legend_entry'; readonly letter: string; readonly entry: Changes<LegendEntry> }
  | { readonly do: 'remove_legend_entry'; readonly letter: string; readonly instead?: string }
  | { readonly do: 'reorder_legend'; readonly letters: readonly string[] }
  | ({
      readonly do: 'add_band';
      readonly at?: number;
      readonly letter?: string;
      readonly rows?: number;
    } & Partial<BandHead>)
  | ({ readonly do: 'remove_band' } & OnBand)
  | ({ readonly do: 'duplicate_band'; readonly name?: string } & OnBand)
  | ({ readonly do: 'move_band'; readonly to: number } & OnBand)
  | ({ readonly do: 'change_band' } & OnBand & Changes<Omit<BandHead, 'columns' | 'edge'>>)
  | ({
      readonly do: 'resize_band';
      readonly columns: number;
      readonly edge: number;
      readonly carry?: 'centre' | 'repeat' | 'resample';
      readonly letter?: string;
    } & OnBand)
  | {
      readonly do: 'resize';
      readonly beads?: Readonly<Record<string, string>>;
      readonly forms?: Readonly<Record<string, string>>;
      readonly carry?: string;
      readonly border?: number;
    }
  | ({ readonly do: 'add_form'; readonly shape: string; readonly id?: string } & Partial<Form>)
  | ({ readonly do: 'change_form'; readonly id: string } & Changes<Omit<Form, 'id'>>)
  | { readonly do: 'remove_form'; readonly id: string }
  | ({ readonly do: 'change_texts' } & Changes<
      Pick<ProjectHead, 'title' | 'subtitle' | 'designer' | 'summary' | 'finished_size' | 'terms'>
    >)
  | { readonly do: 'change_thread'; readonly thread: Changes<NonNullable<ProjectHead['thread']>> }
  | { readonly do: 'set_allowance'; readonly allowance: number }
  | { readonly do: 'set_findings'; readonly findings: ProjectHead['findings'] }
  | { readonly do: 'set_tools'; readonly tools: readonly string[] }
  | { readonly do: 'set_assembly'; readonly assembly: readonly string[] }
  | { readonly do: 'set_beads'; readonly beads: ProjectHead['beads'] }
  | { readonly do: 'set_costing'; readonly costing: ProjectHead['costing'] | null }
  | { readonly do: 'set_strand'; readonly strand: ProjectHead['strand'] | null }
  | { readonly do: 'several'; readonly operations: readonly Operation[]; readonly sentence?: string };
