import { flushSync } from 'svelte';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';

import { asking, type Asked } from './answer_testing.svelte';

/** A server that answers when told to. */
class Server {
  readonly asked: string[] = [];
  #open: ((response: Response) => void)[] = [];

  fetch = (where: string, { signal }: RequestInit): Promise<Response> => {
    this.asked.push(where);
    return new Promise((answer, fail) => {
      this.#open.push(answer);
      signal?.addEventListener('abort', () => fail(new DOMException('aborted', 'AbortError')));
    });
  };
  answer(value: unknown): void {
    for (const answer of this.#open) answer(new Response(JSON.stringify(value)));
    this.#open = [];
  }
}

describe('an answer', () => {
  let server: Server;
  let asked: Asked;

  beforeEach(() => {
    vi.useFakeTimers();
    server = new Server();
    vi.stubGlobal('fetch', server.fetch);
    asked = asking('/api/proof', 500);
    flushSync();
  });
  afterEach(() => {
    asked.end();
    vi.unstubAllGlobals();
    vi.useRealTimers();
  });
  const change = (to: number) => {
    asked.since = to;
    flushSync();
  };

  it('is asked for at once, and after a change when changes have come to rest', async () => {
    await vi.advanceTimersByTimeAsync(0);
    expect(server.asked).toHaveLength(1);
    server.answer(7);
    await vi.advanceTimersByTimeAsync(1);
    expect(asked.answer.value).toBe(7);
    for (let i = 1; i <= 20; i++) {
      change(i);
      await vi.advanceTimersByTimeAsync(30);
    }
    expect(server.asked).toHaveLength(1);
    expect(asked.answer.waiting).toBe(true);
    await vi.advanceTimersByTimeAsync(500);
    expect(server.asked).toHaveLength(2);
  });

  it('is not asked for with every change while the first is still being made', async () => {
    await vi.advanceTimersByTimeAsync(0);
    for (let i = 1; i <= 20; i++) {
      change(i);
      await vi.advanceTimersByTimeAsync(30);
    }
    expect(server.asked).toHaveLength(1);
    await vi.advanceTimersByTimeAsync(500);
    expect(server.asked).toHaveLength(2);
    server.answer(8);
    await vi.advanceTimersByTimeAsync(1);
    expect(asked.answer.value).toBe(8);
  });
});
