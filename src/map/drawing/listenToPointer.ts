/** What a tool does at each turn of a pointer over the map. */
export interface PointerCalls {
  readonly down: (event: PointerEvent) => void;
  readonly move: (event: PointerEvent) => void;
  readonly up: (event: PointerEvent) => void;
  /** the browser took the pointer away. */
  readonly lost: (event: PointerEvent) => void;
}

/** Hears the pointer over an element. @returns a function that ends it */
export function listenToPointer(box: HTMLElement, { down, move, up, lost }: PointerCalls): () => void {
  const pairs = [
    ['pointerdown', down],
    ['pointermove', move],
    ['pointerup', up],
    ['pointercancel', lost],
  ] as const;
  for (const [type, call] of pairs) box.addEventListener(type, call);
  return () => {
    for (const [type, call] of pairs) box.removeEventListener(type, call);
  };
}
