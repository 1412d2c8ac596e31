/**
 * Pointers, wheel and keys over the view. A press that hardly moves is a tap; a drag turns; two fingers move and come nearer. With
 * `paints` a drag that begins on a bead goes on giving beads instead of turning.
 */

export interface Wishes {
  /** By shares of the view's height. */
  turn(right: number, up: number): void;
  shift(right: number, up: number): void;
  /** Below 1: nearer. */
  nearer(factor: number): void;
  rest(): void;
  /** A tap, or a drag that gives beads; true where a bead is met. -1 to 1 from left to right and from below to above. */
  tap(x: number, y: number): boolean;
  over(x: number, y: number): void;
  away(): void;
  /** The bead in the middle of the view. */
  tapMiddle(): void;
  paints(): boolean;
}

/** A finger's tremble, in CSS pixels: from memory. */
const tapReach = 5;
const keyTurn = 0.06;
const keyFactor = 0.85;

interface Finger {
  x: number;
  y: number;
  readonly startX: number;
  readonly startY: number;
  travelled: boolean;
}

/** Listens until the returned function is called. */
export function listen(target: HTMLElement, wishes: Wishes): () => void {
  const fingers = new Map<number, Finger>();
  let giving = false;
  const stop = new AbortController();
  const on = <K extends keyof HTMLElementEventMap>(
    name: K,
    does: (event: HTMLElementEventMap[K]) => void,
    passive = true,
  ) => target.addEventListener(name, does, { signal: stop.signal, passive });

  const place = (x: number, y: number): [number, number] => {
    const box = target.getBoundingClientRect();
    return [((x - box.left) / box.width) * 2 - 1, 1 - ((y - box.top) / box.height) * 2];
  };
  const height = (): number => target.getBoundingClientRect().height || 1;

  on('pointerdown', (event) => {
    target.setPointerCapture?.(event.pointerId);
    const { clientX: x, clientY: y } = event;
    fingers.set(event.pointerId, { x, y, startX: x, startY: y, travelled: fingers.size > 0 });
    if (fingers.size > 1) for (const finger of fingers.values()) finger.travelled = true;
    giving = fingers.size === 1 && event.button === 0 && wishes.paints() && wishes.tap(...place(x, y));
  });

  on('pointermove', (event) => {
    const { clientX: x, clientY: y } = event;
    const finger = fingers.get(event.pointerId);
    if (!finger) {
      if (event.pointerType !== 'touch') wishes.over(...place(x, y));
      return;
    }
    if (giving) {
      wishes.tap(...place(x, y));
      return;
    }
    if (Math.hypot(x - finger.startX, y - finger.startY) > tapReach) finger.travelled = true;
    if (!finger.travelled) return;
    const [dx, dy] = [(x - finger.x) / height(), (finger.y - y) / height()];
    const other = [...fingers.entries()].find(([id]) => id !== event.pointerId)?.[1];
    if (other) {
      const before = Math.hypot(finger.x - other.x, finger.y - other.y);
      const after = Math.hypot(x - other.x, y - other.y);
      if (before > 0 && after > 0) wishes.nearer(before / after);
      wishes.shift(-dx / 2, -dy / 2);
    } else if (event.shiftKey || (event.buttons & 6) !== 0) wishes.shift(-dx, -dy);
    else wishes.turn(dx, dy);
    finger.x = x;
    finger.y = y;
  });

  const up = (event: PointerEvent, counts: boolean) => {
    const finger = fingers.get(event.pointerId);
    fingers.delete(event.pointerId);
    if (counts && finger && !finger.travelled && !giving && event.button === 0)
      wishes.tap(...place(event.clientX, event.clientY));
    if (fingers.size === 0) giving = false;
  };
  on('pointerup', (event) => up(event, true));
  on('pointercancel', (event) => up(event, false));
  on('pointerleave', () => wishes.away());
  on('contextmenu', (event) => event.preventDefault(), false);
  on(
    'wheel',
    (event) => {
      event.preventDefault();
      wishes.nearer(Math.exp(Math.max(-0.5, Math.min(0.5, event.deltaY * 0.0015))));
    },
    false,
  );
  on('keydown', (event) => keyed(event, wishes), false);
  return () => {
    stop.abort();
    fingers.clear();
  };
}

function keyed(event: KeyboardEvent, wishes: Wishes): void {
  if (event.ctrlKey || event.altKey || event.metaKey) return;
  const go = event.shiftKey ? wishes.shift.bind(wishes) : wishes.turn.bind(wishes);
  const acts: Readonly<Record<string, () => void>> = {
    ArrowLeft: () => go(-keyTurn, 0),
    ArrowRight: () => go(keyTurn, 0),
    ArrowUp: () => go(0, keyTurn),
    ArrowDown: () => go(0, -keyTurn),
    '+': () => wishes.nearer(keyFactor),
    '=': () => wishes.nearer(keyFactor),
    '-': () => wishes.nearer(1 / keyFactor),
    Home: () => wishes.rest(),
    Enter: () => wishes.tapMiddle(),
    ' ': () => wishes.tapMiddle(),
  };
  const act = acts[event.key];
  if (!act) return;
  event.preventDefault();
  act();
}
