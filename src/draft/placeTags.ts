/*
 * Where tags stand beside what they name, clear of each other: for screen and paper alike. Lengths are px of the
 * screen, or mm of paper with `unit` telling how many mm a px stands for. y runs down.
 */

/** An upright box by its middle and its size; all of one unit. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export function boxesMeet(a: Box, b: Box): boolean {
  return Math.abs(a.x - b.x) < (a.width + b.width) / 2 && Math.abs(a.y - b.y) < (a.height + b.height) / 2;
}

/** The first of some places where a box meets none that are taken; null when there is none. */
export function freePlace(
  places: Iterable<{ readonly x: number; readonly y: number }>,
  size: { readonly width: number; readonly height: number },
  taken: readonly Box[],
): Box | null {
  for (const { x, y } of places) {
    const box = { x, y, width: size.width, height: size.height };
    if (!taken.some((other) => boxesMeet(other, box))) return box;
  }
  return null;
}

/** A point. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** A tag that wants to stand beside a point. */
export interface WantedTag {
  readonly id: string;
  readonly at: Spot;
  /** unit vector along which it stands off best, such as across a walk. */
  readonly aside: Spot;
  readonly width: number;
  readonly height: number;
  /** how far the point's own drawing reaches along `aside`, px. */
  readonly reach: number;
  /** left out when there is no room near by; otherwise it goes further off, on a leader. */
  readonly isOptional: boolean;
}

/** A placed tag; `isFar`: it wants a leader to its point. */
export interface PlacedTag extends Box {
  readonly id: string;
  readonly isFar: boolean;
}

/** Air between a tag and what it belongs to, px. */
const AIR_PX = 3;
/** Rings in which a tag looks for room further off, px. */
const FAR_PX = [16, 30, 46, 64];
const WAYS = 16;

/** How far the middle of a box stands off so that its edge is clear of a point, in a direction. */
function standOff(width: number, height: number, { x, y }: Spot): number {
  return Math.min(
    Math.abs(x) > 1e-9 ? width / 2 / Math.abs(x) : Number.POSITIVE_INFINITY,
    Math.abs(y) > 1e-9 ? height / 2 / Math.abs(y) : Number.POSITIVE_INFINITY,
  );
}

function* nearPlaces({ at, aside, width, height, reach }: WantedTag, unit: number): Generator<Spot> {
  const along = { x: -aside.y, y: aside.x };
  const diagonals = [1, -1].flatMap((i) =>
    [1, -1].map((j) => ({
      x: (i * aside.x + j * along.x) * Math.SQRT1_2,
      y: (i * aside.y + j * along.y) * Math.SQRT1_2,
    })),
  );
  const ways: [Spot, number][] = [
    [aside, reach],
    [{ x: -aside.x, y: -aside.y }, reach],
    ...diagonals.map((way): [Spot, number] => [way, Math.min(reach, 6 * unit)]),
    [along, 2 * unit],
    [{ x: -along.x, y: -along.y }, 2 * unit],
  ];
  for (const [way, from] of ways) {
    const off = from + AIR_PX * unit + standOff(width, height, way);
    yield { x: at.x + way.x * off, y: at.y + way.y * off };
  }
}

function* farPlaces({ at, width, height, reach }: WantedTag, unit: number): Generator<Spot> {
  for (const ring of FAR_PX) {
    for (let i = 0; i < WAYS; i++) {
      const turn = (2 * Math.PI * i) / WAYS;
      const way = { x: Math.cos(turn), y: Math.sin(turn) };
      const off = Math.min(reach, 8 * unit) + ring * unit + standOff(width, height, way);
      yield { x: at.x + way.x * off, y: at.y + way.y * off };
    }
  }
}

/**
 * Places tags beside their points, in the order given, clear of what is taken and of each other.
 * @param taken boxes of the same unit; not changed. @param unit 1 for px, else mm of paper to a px
 * @returns those that found room; a tag that is not optional always stands somewhere, at worst over others
 */
export function placeTags(
  wanted: readonly WantedTag[],
  taken: readonly Box[],
  unit = 1,
): readonly PlacedTag[] {
  const used: Box[] = [...taken];
  const placed: PlacedTag[] = [];
  for (const tag of wanted) {
    const { id, width, height } = tag;
    const near = freePlace(nearPlaces(tag, unit), tag, used);
    const far = near || tag.isOptional ? null : freePlace(farPlaces(tag, unit), tag, used);
    let box = near ?? far;
    if (!box && tag.isOptional) continue;
    if (!box) {
      const [first] = nearPlaces(tag, unit);
      box = { x: first?.x ?? tag.at.x, y: first?.y ?? tag.at.y, width, height };
    }
    const { x, y } = box;
    placed.push({ id, x, y, width, height, isFar: far !== null });
    used.push({ x, y, width, height });
  }
  return placed;
}
