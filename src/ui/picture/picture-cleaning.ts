import type { PictureStorage } from '../../session/pictureStorage';
import type { YardStorage } from '../../session/types';
import type { Yard } from '../../yard/types';
import { ownPictures } from './picture-edits';

/** Names the yards that pictures were opened for, so that theirs can be cleared once they are gone. */
const KEY = 'measured-yard-pictures';

/** A list of ids that outlives the page; `localStorage` in the browser. */
export type IdList = Pick<Storage, 'getItem' | 'setItem'>;

/** Yards that pictures were opened for; empty when none were or nothing may be kept. */
export function yardsWithPictures(list: IdList): readonly string[] {
  try {
    const ids: unknown = JSON.parse(list.getItem(KEY) ?? '[]');
    return Array.isArray(ids) ? ids.filter((id) => typeof id === 'string') : [];
  } catch {
    return [];
  }
}

/** Notes that a picture was opened for a yard. */
export function noteYardWithPictures(list: IdList, yardId: string): void {
  const ids = yardsWithPictures(list);
  if (ids.includes(yardId)) return;
  try {
    list.setItem(KEY, JSON.stringify([...ids, yardId]));
  } catch {
    // then its pictures stay when it goes
  }
}

/**
 * Clears out pictures that no stored yard shows: those of removed yards, and those taken off a yard's list.
 * Done when the page is opened, as until it is closed both can be undone. A yard that does not open, or a
 * list that cannot be read, keeps its pictures. Pictures of a removed yard that another shows become its.
 * @param openYards the yard on the table, as it is when called and as it was when opened: either's pictures count
 */
export async function cleanPictures(
  list: IdList,
  yards: YardStorage,
  pictures: PictureStorage,
  openYards: () => readonly Yard[],
): Promise<void> {
  const noted = yardsWithPictures(list);
  const entries = await yards.list();
  if (noted.length === 0 || entries.length === 0) return;
  const shownBy = new Map<string, string>();
  const unread = new Set<string>();
  for (const { id } of entries) {
    if (openYards().some((yard) => yard.id === id)) continue;
    const read = await yards.open(id);
    if (!read.ok) unread.add(id);
    else for (const { pictureId } of ownPictures(read.yard)) shownBy.set(pictureId, id);
  }
  // what a damaged yard shows cannot be told
  if (unread.size > 0) return;
  const ownerOf = (pictureId: string) =>
    openYards().find((yard) => ownPictures(yard).some((one) => one.pictureId === pictureId))?.id ??
    shownBy.get(pictureId) ??
    null;
  for (const yardId of noted) {
    if (!entries.some((entry) => entry.id === yardId)) {
      await pictures.removeOfYard(yardId, ownerOf);
      continue;
    }
    for (const { pictureId } of await pictures.list(yardId))
      if (ownerOf(pictureId) === null) await pictures.remove(pictureId);
  }
  const left = noted.filter((id) => entries.some((entry) => entry.id === id));
  const heirs = [...new Set([...shownBy.values(), ...openYards().map((yard) => yard.id)])].filter(
    (id) => !left.includes(id),
  );
  if (left.length + heirs.length !== noted.length || heirs.length > 0)
    list.setItem(KEY, JSON.stringify([...left, ...heirs]));
}
