import { addressOf, routeOf, type ProjectRoute, type Route } from './route';

let here = $state.raw<Route>(routeOf(location.pathname, location.search));

addEventListener('popstate', () => (here = routeOf(location.pathname, location.search)));

export const place = {
  get here(): Route {
    return here;
  },
  go(route: Route): void {
    if (addressOf(route) !== addressOf(here)) history.pushState(null, '', addressOf(route));
    here = route;
  },
  /** Another band, bead or row of the same view: going back leaves the view. */
  turnTo(change: Partial<Omit<ProjectRoute, 'at' | 'project'>>): void {
    if (here.at !== 'project') return;
    const route = { ...here, ...change };
    history.replaceState(null, '', addressOf(route));
    here = route;
  },
};
