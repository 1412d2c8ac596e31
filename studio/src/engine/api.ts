/** Requests to the engine's server. docs/openapi.yaml describes what it answers. */
import { done, failed, noAnswer, type Outcome, type Problem } from './outcome';

export type Query = Readonly<Record<string, string | number | boolean | undefined>>;

/** `/api/projects/moon/bands/2/shape?…`; what is undefined or empty in the query is left out. */
export function address(path: readonly (string | number)[], query: Query = {}): string {
  const asked = new URLSearchParams();
  for (const [name, value] of Object.entries(query))
    if (value !== undefined && value !== '') asked.set(name, String(value));
  const text = asked.toString();
  return `/api/${path.map((part) => encodeURIComponent(part)).join('/')}${text ? `?${text}` : ''}`;
}

export interface Request {
  readonly method?: 'GET' | 'POST' | 'DELETE';
  /** Sent as JSON; a Blob or a text as it is. */
  readonly body?: unknown;
  readonly signal?: AbortSignal | undefined;
}

function bodyOf(body: unknown): { body?: BodyInit; type?: string } {
  if (body === undefined) return {};
  if (body instanceof Blob) return { body, type: body.type || 'application/octet-stream' };
  if (typeof body === 'string') return { body, type: 'text/plain; charset=utf-8' };
  return { body: JSON.stringify(body), type: 'application/json' };
}

async function problemOf(response: Response): Promise<Problem> {
  const said: unknown = await response.json().catch(() => undefined);
  const isProblem = typeof said === 'object' && said !== null && 'code' in said && 'message' in said;
  if (isProblem) return said as Problem;
  return failed(response.status, { code: noAnswer, message: `${response.status} ${response.statusText}` })
    .problem;
}

/** The answer as it came, whatever its type. An aborted request fails with the code `aborted`. */
export async function send(where: string, request: Request = {}): Promise<Outcome<Response>> {
  const { body, type } = bodyOf(request.body);
  const headers: Record<string, string> = { 'X-Evencount': '1' };
  if (type) headers['Content-Type'] = type;
  try {
    const response = await fetch(where, {
      method: request.method ?? (request.body === undefined ? 'GET' : 'POST'),
      headers,
      ...(body === undefined ? {} : { body }),
      ...(request.signal ? { signal: request.signal } : {}),
    });
    if (!response.ok) return { ok: false, status: response.status, problem: await problemOf(response) };
    return done(response);
  } catch (error) {
    if (request.signal?.aborted) return failed(0, { code: 'aborted' });
    return failed(0, { code: noAnswer, message: error instanceof Error ? error.message : String(error) });
  }
}

/** Reads the body; one that ends too soon, or is no JSON, is no answer. */
export async function ask<T>(
  where: string,
  request: Request = {},
  read: (response: Response) => Promise<T> = (response) => response.json() as Promise<T>,
): Promise<Outcome<T>> {
  const sent = await send(where, request);
  if (!sent.ok) return sent;
  try {
    return done(await read(sent.value));
  } catch (error) {
    if (request.signal?.aborted) return failed(0, { code: 'aborted' });
    return failed(sent.value.status, {
      code: noAnswer,
      message: error instanceof Error ? error.message : String(error),
    });
  }
}
