import type { ProjectRoute } from '../place/route';
import type { OpenProject } from '../project/open_project.svelte';

/** What every view of a project is given. */
export interface ViewProps {
  readonly project: OpenProject;
  /** The band in hand: a place among the bands, 0 where there is none. */
  readonly band: number;
  readonly here: ProjectRoute;
}
