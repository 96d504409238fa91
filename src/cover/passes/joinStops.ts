import type { XY } from '../../measure/types';
import { gapOf } from './frame';
import { type Item, itemOfCell, itemOfWork } from './items';
import { bestChoices, type Stop } from './orderItems';
import { type Row, reverseRow, type Work } from './work';

/** More stretches put into a tour, each where it lengthens it least, and the ways of all chosen anew. */
export function insertWorks(
  stops: readonly Stop[],
  works: readonly Work[],
  from: XY | null,
  to: XY | null,
): readonly Stop[] {
  if (works.length === 0) return stops;
  const tour = [...stops];
  for (const work of works) {
    const item = itemOfWork(work);
    let best = { place: tour.length, choice: item.choices[0] as Stop['choice'], extra: Infinity };
    for (let place = 0; place <= tour.length; place++) {
      const a = place > 0 ? tour[place - 1]?.choice.end : from;
      const b = place < tour.length ? tour[place]?.choice.start : to;
      for (const choice of item.choices) {
        const extra = gapOf(a, choice.start) + gapOf(choice.end, b) - gapOf(a, b);
        if (extra < best.extra) best = { place, choice, extra };
      }
    }
    tour.splice(best.place, 0, { item, choice: best.choice });
  }
  return bestChoices(
    tour.map(({ item }) => item),
    from,
    to,
  );
}

const knownRows = new WeakMap<Item, readonly Row[]>();

/** Stretches of an item as it was made, in rows; the same ones at each call. */
export function rowsOfItem(item: Item): readonly Row[] {
  const known = knownRows.get(item);
  if (known) return known;
  const laid = item.choices[0]?.rows() ?? [];
  const rows = isCell(item) ? laid.map((row, i) => (i % 2 === 0 ? row : reverseRow(row))) : laid;
  knownRows.set(item, rows);
  return rows;
}

const isCell = ({ kind, choices }: Item): boolean => kind === 'cell' && choices.length === 4;

/** Items with other stretches in place of some; an item left with none is gone. @param change what a stretch becomes */
export function changeItems(items: readonly Item[], change: (work: Work) => readonly Work[]): Item[] {
  return items.flatMap((item): Item[] => {
    const rows = rowsOfItem(item);
    let isSame = true;
    const changed = rows
      .map((row) =>
        row.flatMap((work) => {
          const made = change(work);
          if (made.length !== 1 || made[0] !== work) isSame = false;
          return made;
        }),
      )
      .filter((row) => row.length > 0);
    if (isSame) return [item];
    if (isCell(item)) return changed.length > 0 ? [itemOfCell({ rows: changed })] : [];
    return changed.flat().map(itemOfWork);
  });
}
