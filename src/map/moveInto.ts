import L from 'leaflet';

/** How far the view must go, px, for a box of the screen to come into another, larger one. */
export function moveInto(box: L.Bounds, view: L.Bounds): L.Point {
  const [min, max, low, high] = [box.min, box.max, view.min, view.max] as [
    L.Point,
    L.Point,
    L.Point,
    L.Point,
  ];
  const by = (from: number, to: number, least: number, most: number) =>
    from < least ? from - least : to > most ? to - most : 0;
  return L.point(by(min.x, max.x, low.x, high.x), by(min.y, max.y, low.y, high.y));
}
