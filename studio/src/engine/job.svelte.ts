/** A piece of long work on the server, followed to its end. */
import { address, ask } from './api';
import { events } from './events';
import type { Problem } from './outcome';
import type { Job } from './shapes';

const ended = (job: Job): boolean => !['waiting', 'running'].includes(job.state);

export class Work {
  #job = $state.raw<Job>();
  #problem = $state.raw<Problem>();
  #stopListening: (() => void) | undefined;

  get job(): Job | undefined {
    return this.#job;
  }
  /** Why it couldn't be started, or wasn't finished. */
  get problem(): Problem | undefined {
    return this.#problem;
  }
  get running(): boolean {
    return this.#job !== undefined && !ended(this.#job);
  }
  get done(): boolean {
    return this.#job?.state === 'done';
  }

  /** Starts work anew; what ran before is called off. */
  async start(where: string, body?: unknown): Promise<boolean> {
    await this.cancel();
    this.#job = undefined;
    const begun = await ask<Job>(where, { method: 'POST', body });
    this.#problem = begun.ok ? undefined : begun.problem;
    if (!begun.ok) return false;
    this.#job = begun.value;
    this.#follow();
    // It may have ended before anyone listened.
    await this.#read(begun.value.id);
    return true;
  }

  /** Goes on with work that was started before, where the server still knows it. */
  async take(id: string): Promise<boolean> {
    const job = await ask<Job>(address(['jobs', id]));
    if (!job.ok || this.#job) return false;
    this.#job = job.value;
    if (this.running) this.#follow();
    return true;
  }

  #follow(): void {
    this.#stopListening?.();
    this.#stopListening = events.on('job', (told) => {
      if (told.id === this.#job?.id) void this.#told(told);
    });
  }

  async cancel(): Promise<void> {
    if (this.#job && this.running) await ask(address(['jobs', this.#job.id]), { method: 'DELETE' });
  }

  /** The address of something that came of it. */
  part(name: string): string | undefined {
    return this.#job && this.done ? address(['jobs', this.#job.id, 'parts', name]) : undefined;
  }

  /** The same, or what there is of it so far. */
  partSoFar(name: string): string | undefined {
    const job = this.#job;
    if (!job || (!this.done && job.shown === 0)) return undefined;
    return address(['jobs', job.id, 'parts', name], this.done ? {} : { shown: job.shown });
  }

  forget(): void {
    void this.cancel();
    this.#stopListening?.();
    this.#stopListening = undefined;
    this.#job = undefined;
    this.#problem = undefined;
  }

  async #told(told: Pick<Job, 'id' | 'state' | 'progress' | 'step' | 'shown'>): Promise<void> {
    if (['waiting', 'running'].includes(told.state)) {
      if (this.#job && this.running) this.#job = { ...this.#job, ...told };
    } else {
      await this.#read(told.id);
    }
  }

  async #read(id: string): Promise<void> {
    const job = await ask<Job>(address(['jobs', id]));
    if (this.#job?.id !== id) return;
    if (!job.ok) {
      this.#problem = job.problem;
      return;
    }
    this.#job = job.value;
    if (!ended(job.value)) return;
    this.#stopListening?.();
    this.#stopListening = undefined;
    if (job.value.state === 'failed' && job.value.problem)
      this.#problem = { code: 'failed', where: '', found: '', expected: '', ...job.value.problem };
  }
}
