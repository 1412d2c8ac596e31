/**
 * The open project: what the server last said of it, and what is done to it. Every change goes to the server as an operation, one after
 * the other, and comes back as a patch; the page never runs ahead of what is on disk.
 */
import { address, ask } from '../engine/api';
import { done, type Outcome, type Problem } from '../engine/outcome';
import type { Accepted, Patches, Previewed, ProjectState } from '../engine/shapes';
import { applyPatch, documentOf, type BandDocument, type ProjectDocument } from './document';
import type { Operation } from './operation';

export interface Preview {
  readonly sentence: string;
  readonly document: ProjectDocument;
}

const outOfDate = 'out_of_date';

export class OpenProject {
  readonly id: string;
  // Apart, so that what shows the legend or the forms is not asked anew with every stroke.
  #head = $state.raw<ProjectDocument['head']>({ format: 1, title: '', beads: [], legend: [] });
  #bands = $state.raw<readonly BandDocument[]>([]);
  #revision = $state(0);
  #undo = $state<string | null>(null);
  #redo = $state<string | null>(null);
  #fileProblem = $state<string | null>(null);
  #waiting = $state(0);
  #said = $state('');
  #problem = $state.raw<Problem>();
  #queue: Promise<unknown> = Promise.resolve();
  /** Applied patches this page has not asked for itself: what others did. */
  #others = $state(0);

  private constructor(state: ProjectState) {
    this.id = state.id;
    this.#take(state);
  }

  static async open(id: string): Promise<Outcome<OpenProject>> {
    const state = await ask<ProjectState>(address(['projects', id]));
    return state.ok ? done(new OpenProject(state.value)) : state;
  }

  get head() {
    return this.#head;
  }
  get bands(): readonly BandDocument[] {
    return this.#bands;
  }
  get revision(): number {
    return this.#revision;
  }
  /** What would be undone, in words. */
  get undoable(): string | null {
    return this.#undo;
  }
  get redoable(): string | null {
    return this.#redo;
  }
  /** Why the JSON file can't be written at the moment. */
  get fileProblem(): string | null {
    return this.#fileProblem;
  }
  /** Changes that are on their way. */
  get waiting(): number {
    return this.#waiting;
  }
  /** The last thing that was done, for those who listen to the page. */
  get said(): string {
    return this.#said;
  }
  /** The last change that was refused, until another succeeds or it is put away. */
  get problem(): Problem | undefined {
    return this.#problem;
  }
  get changesOfOthers(): number {
    return this.#others;
  }
  putAwayProblem(): void {
    this.#problem = undefined;
  }

  operate(operation: Operation): Promise<Outcome<Accepted>> {
    return this.#change(['operations'], operation, true);
  }
  undo(): Promise<Outcome<Accepted>> {
    return this.#change(['undo'], undefined, false);
  }
  redo(): Promise<Outcome<Accepted>> {
    return this.#change(['redo'], undefined, false);
  }
  /** What a picture's job made. */
  applyJob(job: string): Promise<Outcome<Accepted>> {
    return this.#queued(() => this.#ask(address(['jobs', job, 'apply']), undefined, true));
  }

  /** What an operation, or a picture's job, would make of the project. Nothing is changed, and a refusal is the asker's alone. */
  preview(operation: Operation): Promise<Outcome<Preview>> {
    return this.#preview(address(['projects', this.id, 'preview']), operation);
  }
  previewJob(job: string): Promise<Outcome<Preview>> {
    return this.#preview(address(['jobs', job, 'preview']), undefined);
  }

  async #preview(where: string, body: Operation | undefined): Promise<Outcome<Preview>> {
    const document = this.#document;
    const would = await ask<Previewed>(`${where}?revision=${this.#revision}`, { method: 'POST', body });
    if (!would.ok) return would;
    return done({ sentence: would.value.sentence, document: applyPatch(document, would.value.patch) });
  }

  /** The server stands at this revision: asks for what is missing, after what is on its way. */
  async catchUp(to: number): Promise<void> {
    if (to <= this.#revision) return;
    await this.#queued(async () => {
      if (to > this.#revision) await this.#askPatches();
    });
  }

  #change(path: readonly string[], body: Operation | undefined, again: boolean): Promise<Outcome<Accepted>> {
    return this.#queued(() => this.#ask(address(['projects', this.id, ...path]), body, again));
  }

  #queued<T>(work: () => Promise<T>): Promise<T> {
    this.#waiting++;
    const result = this.#queue.then(work);
    this.#queue = result.then(
      () => this.#waiting--,
      () => this.#waiting--,
    );
    return result;
  }

  /**
   * A change that came too late is made again on the newest revision, once: both changes stand in the history, and the later stroke wins
   * where they meet, as if the two had been made at one table. An undo isn't: it means what the person saw last.
   */
  async #ask(where: string, body: Operation | undefined, again: boolean): Promise<Outcome<Accepted>> {
    const made = await ask<Accepted>(`${where}?revision=${this.#revision}`, { method: 'POST', body });
    if (!made.ok) {
      if (made.problem.code === outOfDate) {
        await this.#askPatches();
        if (again) return this.#ask(where, body, false);
      }
      this.#problem = made.problem;
      return made;
    }
    this.#problem = undefined;
    // What changed nothing has no revision of its own: the answer's is then one of the others'.
    const changed = Object.keys(made.value.patch).length > 0;
    if (changed && made.value.revision === this.#revision + 1)
      this.#takePatch(made.value.revision, made.value.patch);
    else if (made.value.revision > this.#revision) await this.#askPatches();
    this.#undo = made.value.undo;
    this.#redo = made.value.redo;
    this.#said = made.value.sentence;
    return made;
  }

  get #document(): ProjectDocument {
    return { head: this.#head, bands: this.#bands };
  }
  #show({ head, bands }: ProjectDocument): void {
    this.#head = head;
    this.#bands = bands;
  }

  #takePatch(revision: number, patch: Accepted['patch']): void {
    this.#show(applyPatch(this.#document, patch));
    this.#revision = revision;
  }

  /** Patches come so many at a time; a page that is farther behind, or on another course, reads the project anew. */
  async #askPatches(): Promise<void> {
    const missing = await ask<Patches>(address(['projects', this.id, 'patches'], { after: this.#revision }));
    if (!missing.ok) return this.#readAnew();
    for (const { revision, patch, sentence } of missing.value.patches) {
      if (revision !== this.#revision + 1) return this.#readAnew();
      this.#takePatch(revision, patch);
      this.#said = sentence;
    }
    if (missing.value.revision !== this.#revision) return this.#readAnew();
    this.#undo = missing.value.undo;
    this.#redo = missing.value.redo;
    this.#fileProblem = missing.value.file_problem;
    this.#others++;
  }

  async #readAnew(): Promise<void> {
    const state = await ask<ProjectState>(address(['projects', this.id]));
    if (state.ok) this.#take(state.value);
    else this.#problem = state.problem;
  }

  #take(state: ProjectState): void {
    this.#show(documentOf(state.project));
    this.#revision = state.revision;
    this.#undo = state.undo;
    this.#redo = state.redo;
    this.#fileProblem = state.file_problem;
  }
}
