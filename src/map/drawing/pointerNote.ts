import type L from 'leaflet';

/** A small note beside the pointer with the figures of the drawing. */
export interface PointerNote {
  show(at: L.LatLng, lines: readonly string[], isBad: boolean): void;
  hide(): void;
  remove(): void;
}

export function createPointerNote(map: L.Map): PointerNote {
  const box = document.createElement('div');
  box.className = 'yard-note';
  box.hidden = true;
  box.setAttribute('aria-hidden', 'true');
  map.getContainer().append(box);
  return {
    show(at, lines, isBad) {
      box.replaceChildren(
        ...lines.map((text) => {
          const line = document.createElement('div');
          line.textContent = text;
          return line;
        }),
      );
      box.hidden = lines.length === 0;
      box.classList.toggle('is-bad', isBad);
      const spot = map.latLngToContainerPoint(at);
      const size = map.getSize();
      const isRight = spot.x + 24 + box.offsetWidth > size.x;
      const isLow = spot.y + 24 + box.offsetHeight > size.y;
      const x = isRight ? spot.x - 16 - box.offsetWidth : spot.x + 18;
      const y = isLow ? spot.y - 16 - box.offsetHeight : spot.y + 18;
      box.style.transform = `translate(${Math.round(Math.max(0, x))}px, ${Math.round(Math.max(0, y))}px)`;
    },
    hide() {
      box.hidden = true;
    },
    remove() {
      box.remove();
    },
  };
}
