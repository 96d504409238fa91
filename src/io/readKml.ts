import { kmlWithFolders, type Root } from '@tmcw/togeojson';
import type { Document, Element } from '@xmldom/xmldom';
import { type FeatureSink, importIssue } from './importTypes';
import { childText, elementsNamed } from './readXml';

/** Properties of looks that are no use on the ground. */
const LOOKS = /^(stroke|fill|label|icon|styleHash|styleMapHash|visibility|open|bbox|lod)/;

/**
 * Reads a KML document (OGC 12-007r2) into features, by the togeojson library. Folders become layers.
 * A ground overlay and a network link are told and left; nothing is fetched.
 * @param layer name of the file, when it is one of several
 */
export function readKml(document: Document, layer: string, sink: FeatureSink): void {
  const links = elementsNamed(document, 'NetworkLink');
  for (const link of links) link.parentNode?.removeChild(link);
  const overlays = elementsNamed(document, 'GroundOverlay');
  for (const overlay of overlays) overlay.parentNode?.removeChild(overlay);
  if (links.length > 0) {
    const message = `${countOf(links.length, 'link')} to other places in the file: not followed, as nothing is fetched from elsewhere.`;
    sink.tell(importIssue('network-link', 'note', message));
  }
  for (const overlay of overlays) {
    const name = childText(overlay, 'name');
    const message = `The picture${name === '' ? '' : ` “${name}”`} laid on the ground is not taken with the shapes. To use it as a base, load the picture itself.`;
    sink.tell(importIssue('ground-overlay', 'note', message));
  }
  const placemarks = elementsNamed(document, 'Placemark');
  const tree = kmlWithFolders(document as never);
  let number = 0;
  const visit = (children: Root['children'], path: string): void => {
    for (const child of children) {
      if (child.type === 'folder') {
        const name = String(child.meta.name ?? '').trim();
        visit(child.children, [path, name].filter((each) => each !== '').join(' / '));
        continue;
      }
      const fault = faultOf(placemarks[number]);
      number += 1;
      const { coordinateProperties: _times, ...rest } = child.properties ?? {};
      const properties = Object.fromEntries(Object.entries(rest).filter(([key]) => !LOOKS.test(key)));
      sink.add({
        text: JSON.stringify({ type: 'Feature', id: child.id, properties, geometry: child.geometry }),
        layer: path,
        place: `Placemark ${number}`,
        ...(fault === null ? {} : { fault }),
      });
    }
  };
  visit(tree.children, layer);
}

/** Tuples of numbers that the reader would pass over in silence. */
function faultOf(placemark: Element | undefined): string | null {
  if (placemark === undefined) return null;
  for (const list of elementsNamed(placemark, 'coordinates')) {
    const tuples = (list.textContent ?? '').trim().split(/\s+/);
    const bad = tuples.findIndex((tuple) => !isTuple(tuple));
    if (bad >= 0 && tuples[0] !== '') {
      return `corner ${bad + 1} (“${(tuples[bad] ?? '').slice(0, 40)}”) is no longitude,latitude.`;
    }
  }
  return null;
}

function isTuple(tuple: string): boolean {
  const parts = tuple.replace(/,$/, '').split(',');
  return (
    parts.length >= 2 &&
    parts.length <= 3 &&
    parts.every((part) => part !== '' && Number.isFinite(Number(part)))
  );
}

function countOf(count: number, word: string): string {
  return count === 1 ? `One ${word}` : `${count} ${word}s`;
}
