/** Where in the studio a person is, as the page's address says it. */

/** The path of a project, in the order in which it is walked. */
export const stops = ['form', 'band', 'colours', 'strand', 'supplies', 'proof', 'booklet'] as const;
export type Stop = (typeof stops)[number];

export type Route =
  | { readonly at: 'opening' }
  | {
      readonly at: 'project';
      readonly project: string;
      readonly stop: Stop;
      /** The band in hand, by its place. */
      readonly band: number;
      /** A bead that is to be found on the band: column and step. */
      readonly cell?: readonly [number, number] | undefined;
      readonly row?: number | undefined;
      /** A wearer's size, by its name. */
      readonly size?: string | undefined;
    };
export type ProjectRoute = Extract<Route, { at: 'project' }>;

export const opening: Route = { at: 'opening' };

const whole = (text: string | null): number | undefined =>
  text !== null && /^\d{1,6}$/.test(text) ? Number(text) : undefined;

/** `/p/moonwatch/band?band=3&cell=1,17`. What can't be read leads to the opening. */
export function routeOf(path: string, query: string): Route {
  const [first, project, stop = 'band', ...more] = path.split('/').filter((part) => part !== '');
  const known = stops.find((one) => one === stop);
  if (first !== 'p' || project === undefined || !known || more.length > 0) return opening;
  const asked = new URLSearchParams(query);
  const cell = /^(\d{1,6}),(\d{1,6})$/.exec(asked.get('cell') ?? '');
  let name: string;
  try {
    name = decodeURIComponent(project);
  } catch {
    return opening;
  }
  return {
    at: 'project',
    project: name,
    stop: known,
    band: whole(asked.get('band')) ?? 0,
    cell: cell ? [Number(cell[1]), Number(cell[2])] : undefined,
    row: whole(asked.get('row')),
    size: asked.get('size')?.slice(0, 200) || undefined,
  };
}

export function addressOf(route: Route): string {
  if (route.at === 'opening') return '/';
  const asked = new URLSearchParams();
  if (route.band > 0) asked.set('band', String(route.band));
  if (route.cell) asked.set('cell', route.cell.join(','));
  if (route.row !== undefined) asked.set('row', String(route.row));
  if (route.size) asked.set('size', route.size);
  const query = asked.toString();
  return `/p/${encodeURIComponent(route.project)}/${route.stop}${query ? `?${query}` : ''}`;
}
