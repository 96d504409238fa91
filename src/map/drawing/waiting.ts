import type L from 'leaflet';
import type { DrawSession } from './session';

/** Stands in for a tool that is still being fetched: keeps what is done meanwhile and hands it over. */
export class Waiting implements DrawSession {
  private readonly acts: ((session: DrawSession) => void)[] = [];

  constructor(private readonly map: L.Map) {
    map.on('click', this.onClick);
    map.getContainer().classList.add('is-waiting');
  }
  private readonly onClick = (event: L.LeafletMouseEvent): void => this.addPointAt(event.latlng);
  addPointAt(at: L.LatLng): void {
    this.acts.push((session) => session.addPointAt?.(at));
  }
  finish(): void {
    this.acts.push((session) => session.finish());
  }
  addSide(lengthM: number, bearingDeg: number | null): void {
    this.acts.push((session) => session.addSide?.(lengthM, bearingDeg));
  }
  backOnePoint(): boolean {
    this.acts.push((session) => session.backOnePoint?.());
    return true;
  }
  /** @param isAtWork whether the tool is still in hand: one act may end it */
  handOver(session: DrawSession, isAtWork: () => boolean): void {
    for (const act of this.acts) if (isAtWork()) act(session);
  }
  stop(): void {
    this.map.off('click', this.onClick);
    this.map.getContainer().classList.remove('is-waiting');
  }
}
