/**
 * What happens on the server, told to every tab. One tab listens and passes it on: a browser opens only a few connections to a
 * host, and a seventh tab would wait for ever.
 */
import type { Job } from './shapes';

export interface Happened {
  /** First, and again after each reconnection: where every open project stands. */
  readonly hello: { readonly revisions: Readonly<Record<string, number>> };
  readonly project: { readonly id: string; readonly revision: number };
  readonly projects: Readonly<Record<string, never>>;
  readonly job: Pick<Job, 'id' | 'kind' | 'project' | 'state' | 'progress' | 'step' | 'shown'>;
}
export type HappenedName = keyof Happened;
const names: readonly HappenedName[] = ['hello', 'project', 'projects', 'job'];

type Listener<Name extends HappenedName> = (what: Happened[Name]) => void;

const channelName = 'evencount-events';

export class EventStream {
  readonly #listeners = new Map<HappenedName, Set<(what: never) => void>>();
  #source: EventSource | undefined;
  #channel: BroadcastChannel | undefined;
  #ended = new AbortController();

  /** Listens by itself where tabs can't agree on one (a page from the network is no secure context). */
  start(): void {
    if (!('locks' in navigator) || !('BroadcastChannel' in window)) {
      this.#listen();
      return;
    }
    this.#channel = new BroadcastChannel(channelName);
    this.#channel.onmessage = ({ data }: MessageEvent<{ name: HappenedName; what: unknown }>) =>
      this.#tell(data.name, data.what);
    void navigator.locks
      .request(channelName, { signal: this.#ended.signal }, async () => {
        this.#listen();
        await new Promise((resolve) => this.#ended.signal.addEventListener('abort', resolve));
      })
      .catch(() => undefined);
  }

  stop(): void {
    this.#ended.abort();
    this.#source?.close();
    this.#channel?.close();
  }

  /** Gives what ends the listening. */
  on<Name extends HappenedName>(name: Name, listener: Listener<Name>): () => void {
    const listeners = this.#listeners.get(name) ?? new Set();
    this.#listeners.set(name, listeners);
    listeners.add(listener);
    return () => listeners.delete(listener);
  }

  #listen(): void {
    this.#source = new EventSource('/api/events');
    for (const name of names)
      this.#source.addEventListener(name, ({ data }: MessageEvent<string>) => {
        const what: unknown = JSON.parse(data);
        this.#channel?.postMessage({ name, what });
        this.#tell(name, what);
      });
  }

  #tell(name: HappenedName, what: unknown): void {
    for (const listener of this.#listeners.get(name) ?? []) listener(what as never);
  }
}

export const events = new EventStream();
