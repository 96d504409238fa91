import type { LitElement, ReactiveController } from 'lit';

/** Tells an element the width of its content box, px, when it is shown and whenever that changes. */
export class WidthWatch implements ReactiveController {
  private readonly observer: ResizeObserver;

  constructor(
    private readonly host: LitElement,
    tell: (widthPx: number) => void,
  ) {
    this.observer = new ResizeObserver(([entry]) => tell(entry?.contentRect.width ?? 0));
    host.addController(this);
  }

  hostConnected(): void {
    this.observer.observe(this.host);
  }

  hostDisconnected(): void {
    this.observer.disconnect();
  }
}
