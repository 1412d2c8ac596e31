import { afterEach, describe, expect, it, vi } from 'vitest';

import type { Patch, SavedProject } from '../engine/shapes';
import { OpenProject } from './open_project.svelte';

const saved: SavedProject = {
  format: 1,
  title: 'Two',
  beads: [{ id: 'cylinder-11' }],
  legend: [
    { letter: 'A', name: 'night', colour: '#101030', bead: 'cylinder-11' },
    { letter: 'B', name: 'moon', colour: '#ffffee', bead: 'cylinder-11' },
  ],
  bands: [{ name: 'One', technique: 'brick', bead: 'cylinder-11', columns: 4, edge: 1, cells: ['4A'] }],
};

/** A server of one band of four beads: `set` gives a cell the second bead; changes by others are put in from outside. */
class Server {
  readonly patches: Patch[] = [];
  readonly asked: string[] = [];
  down = false;

  get revision(): number {
    return this.patches.length;
  }
  take(cell: number): Patch {
    const patch = { cells: [{ band: 0, runs: [cell, 1, 0, 1] }] };
    this.patches.push(patch);
    return patch;
  }
  #about() {
    return {
      revision: this.revision,
      undo: this.revision > 0 ? 'drew 1 bead' : null,
      redo: null,
      file_problem: null,
    };
  }
  #answer(status: number, body: unknown): Response {
    return new Response(JSON.stringify(body), { status });
  }
  fetch = (where: string, sent: { method: string; body?: string }): Promise<Response> => {
    this.asked.push(`${sent.method} ${where}`);
    if (this.down) return Promise.reject(new TypeError('no network'));
    const url = new URL(where, 'http://127.0.0.1');
    if (url.pathname.endsWith('/patches')) {
      const after = Number(url.searchParams.get('after'));
      const patches = this.patches
        .slice(after)
        .map((patch, i) => ({ revision: after + i + 1, sentence: 'drew 1 bead', patch }));
      return Promise.resolve(this.#answer(200, { ...this.#about(), patches }));
    }
    if (url.pathname.endsWith('/operations')) {
      const { cells } = JSON.parse(sent.body ?? '') as { cells: [[number, number]] };
      // A bead that has the colour already: nothing is made, on whichever revision it is asked.
      if (this.patches.some((one) => one.cells?.[0]?.runs[0] === cells[0][0]))
        return Promise.resolve(this.#answer(200, { ...this.#about(), sentence: 'drew 0 beads', patch: {} }));
      if (Number(url.searchParams.get('revision')) !== this.revision)
        return Promise.resolve(
          this.#answer(409, {
            code: 'out_of_date',
            message: 'changed since',
            where: '',
            found: '',
            expected: '',
          }),
        );
      const patch = this.take(cells[0][0]);
      return Promise.resolve(this.#answer(200, { ...this.#about(), sentence: 'drew 1 bead', patch }));
    }
    if (url.pathname.endsWith('/undo'))
      return Promise.resolve(
        this.#answer(409, {
          code: 'out_of_date',
          message: 'changed since',
          where: '',
          found: '',
          expected: '',
        }),
      );
    return Promise.resolve(this.#answer(200, { id: 'two', ...this.#about(), project: saved }));
  };
}

async function opened(server: Server): Promise<OpenProject> {
  vi.stubGlobal('fetch', server.fetch);
  const project = await OpenProject.open('two');
  if (!project.ok) throw new Error(project.problem.message);
  return project.value;
}
const beadsOf = (project: OpenProject) => [...(project.bands[0]?.beads ?? [])];
const draw = (project: OpenProject, column: number) =>
  project.operate({ do: 'set', band: 0, cells: [[column, 0]], letter: 'B' });

afterEach(() => vi.unstubAllGlobals());

describe('an open project', () => {
  it('shows what the server has taken, in the order of the asking', async () => {
    const server = new Server();
    const project = await opened(server);
    await Promise.all([draw(project, 0), draw(project, 2)]);
    expect(beadsOf(project)).toEqual([1, 0, 1, 0]);
    expect(project.revision).toBe(2);
    expect(project.undoable).toBe('drew 1 bead');
    expect(project.waiting).toBe(0);
    expect(server.asked.filter((one) => one.startsWith('POST'))).toEqual([
      'POST /api/projects/two/operations?revision=0',
      'POST /api/projects/two/operations?revision=1',
    ]);
  });

  it('makes a change that came too late once more, on top of the others’', async () => {
    const server = new Server();
    const project = await opened(server);
    server.take(3);
    expect((await draw(project, 1)).ok).toBe(true);
    expect(beadsOf(project)).toEqual([0, 1, 0, 1]);
    expect(project.changesOfOthers).toBe(1);
    expect(project.problem).toBeUndefined();
  });

  it('takes in what others did when its own change changes nothing', async () => {
    const server = new Server();
    const project = await opened(server);
    await draw(project, 1);
    server.take(3);
    expect((await draw(project, 1)).ok).toBe(true);
    expect(project.revision).toBe(2);
    expect(beadsOf(project)).toEqual([0, 1, 0, 1]);
  });

  it('undoes only what the person has seen last', async () => {
    const server = new Server();
    const project = await opened(server);
    server.take(3);
    const undone = await project.undo();
    expect(undone.ok).toBe(false);
    expect(project.problem?.code).toBe('out_of_date');
    expect(beadsOf(project), 'the others’ change is shown').toEqual([0, 0, 0, 1]);
    expect(server.asked.filter((one) => one.includes('undo'))).toHaveLength(1);
  });

  it('catches up when it hears of newer revisions, and only then', async () => {
    const server = new Server();
    const project = await opened(server);
    server.take(0);
    server.take(1);
    await Promise.all([project.catchUp(1), project.catchUp(2), project.catchUp(2)]);
    expect(beadsOf(project)).toEqual([1, 1, 0, 0]);
    const asked = server.asked.length;
    await project.catchUp(2);
    expect(server.asked).toHaveLength(asked);
  });

  it('keeps what it has where the server is gone, and goes on when it is back', async () => {
    const server = new Server();
    const project = await opened(server);
    server.down = true;
    expect((await draw(project, 1)).ok).toBe(false);
    expect(project.problem?.code).toBe('no_answer');
    expect(beadsOf(project)).toEqual([0, 0, 0, 0]);
    server.down = false;
    expect((await draw(project, 1)).ok).toBe(true);
    expect(project.problem).toBeUndefined();
    expect(beadsOf(project)).toEqual([0, 1, 0, 0]);
  });

  it('leaves the legend as it is when beads are drawn', async () => {
    const project = await opened(new Server());
    const { head } = project;
    await draw(project, 1);
    expect(project.head).toBe(head);
  });
});
