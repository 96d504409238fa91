import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** How far the mouse goes before a press becomes a drag, px. */
const SLACK_PX = 5;
/** How long a finger rests before it takes hold, ms; common practice, no source. */
const LONG_PRESS_MS = 350;
/** Height at either end of the scrolled box in which it goes on by itself, px, and by how much a frame. */
const EDGE_PX = 48;
const EDGE_STEP_PX = 9;

/** What a calendar tells the hold, and hears from it. */
export interface HoldEvents {
  /** may this visit be moved at all? */
  canHold(visitId: string): boolean;
  /** the day under the pointer; null: none there. @param dy px down from where it was taken up, scrolling counted in */
  dayAt(visitId: string, x: number, y: number, dy: number): string | null;
  /** whether the box goes on by itself near its ends. */
  scrolls(): boolean;
  /** the pointer went on. */
  moved(): void;
  /** held at a day (null: over none), each time that changes. */
  over(visitId: string, date: string | null): void;
  /** let go at a day. */
  drop(visitId: string, date: string): void;
  /** put back. */
  cancel(visitId: string): void;
}

interface Press {
  readonly visitId: string;
  readonly pointerId: number;
  readonly startX: number;
  readonly startY: number;
  readonly chip: HTMLElement;
  readonly scroller: Element | null;
  readonly scrollTop: number;
  x: number;
  y: number;
  isHeld: boolean;
}

/**
 * Takes hold of a visit by pointer: a mouse by dragging, a finger by a long press. Near the ends of the scrolled
 * box it scrolls on. A chip starts it by `press`.
 */
export class VisitHold implements ReactiveController {
  /** where the held visit is, px of the page; null: none is held by pointer. */
  ghost: { readonly visitId: string; readonly x: number; readonly y: number } | null = null;

  private now: Press | null = null;
  private timer = 0;
  private frame = 0;
  private day: string | null = null;
  /** a press that became a hold ends in a click that is none. */
  private swallow = false;

  constructor(
    private readonly host: ReactiveControllerHost & HTMLElement,
    private readonly events: HoldEvents,
  ) {
    host.addController(this);
  }

  hostConnected(): void {
    // while a finger holds a visit the page does not scroll under it
    this.host.addEventListener('touchmove', this.keepStill, { passive: false });
    this.host.addEventListener('contextmenu', this.keepStill);
  }

  hostDisconnected(): void {
    this.host.removeEventListener('touchmove', this.keepStill);
    this.host.removeEventListener('contextmenu', this.keepStill);
    this.end();
  }

  /** True once after a hold: the click that follows it opens nothing. */
  takesClick(): boolean {
    const was = this.swallow;
    this.swallow = false;
    return was;
  }

  press(event: PointerEvent, visitId: string): void {
    this.swallow = false;
    if (event.button !== 0 || this.now || !this.events.canHold(visitId)) return;
    const chip = event.currentTarget as HTMLElement;
    const scroller = scrollerOf(this.host);
    this.now = {
      visitId,
      pointerId: event.pointerId,
      startX: event.clientX,
      startY: event.clientY,
      chip,
      scroller,
      scrollTop: scroller?.scrollTop ?? 0,
      x: event.clientX,
      y: event.clientY,
      isHeld: false,
    };
    if (event.pointerType !== 'mouse') this.timer = window.setTimeout(() => this.take(), LONG_PRESS_MS);
    window.addEventListener('pointermove', this.onMove);
    window.addEventListener('pointerup', this.onUp);
    window.addEventListener('pointercancel', this.onCancel);
    window.addEventListener('keydown', this.onKey, true);
  }

  private readonly keepStill = (event: Event): void => {
    if (this.now?.isHeld) event.preventDefault();
  };

  private readonly onMove = (event: PointerEvent): void => {
    const { now } = this;
    if (!now || event.pointerId !== now.pointerId) return;
    now.x = event.clientX;
    now.y = event.clientY;
    const isFar = Math.hypot(now.x - now.startX, now.y - now.startY) > SLACK_PX;
    if (!now.isHeld) {
      if (!isFar) return;
      if (event.pointerType !== 'mouse') {
        this.end();
        return;
      }
      this.take();
    }
    this.look();
  };

  private readonly onUp = (event: PointerEvent): void => {
    const { now, day } = this;
    if (!now || event.pointerId !== now.pointerId) return;
    this.end();
    if (!now.isHeld) return;
    this.swallow = true;
    if (day === null) this.events.cancel(now.visitId);
    else this.events.drop(now.visitId, day);
  };

  private readonly onCancel = (): void => {
    const { now } = this;
    this.end();
    if (now?.isHeld) this.events.cancel(now.visitId);
  };

  private readonly onKey = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape' || !this.now?.isHeld) return;
    event.preventDefault();
    event.stopPropagation();
    this.swallow = true;
    this.onCancel();
  };

  private take(): void {
    const { now } = this;
    if (!now) return;
    now.isHeld = true;
    clearTimeout(this.timer);
    navigator.vibrate?.(15);
    this.look();
    this.host.requestUpdate();
    if (!this.events.scrolls()) return;
    const scroll = () => {
      this.frame = requestAnimationFrame(scroll);
      const box = now.scroller?.getBoundingClientRect();
      if (!box || !now.scroller) return;
      const before = now.scroller.scrollTop;
      if (now.y > box.bottom - EDGE_PX) now.scroller.scrollTop += EDGE_STEP_PX;
      else if (now.y < box.top + EDGE_PX) now.scroller.scrollTop -= EDGE_STEP_PX;
      if (now.scroller.scrollTop !== before) this.look();
    };
    this.frame = requestAnimationFrame(scroll);
  }

  private look(): void {
    const { now } = this;
    if (!now) return;
    this.ghost = { visitId: now.visitId, x: now.x, y: now.y };
    const dy = now.y - now.startY + (now.scroller?.scrollTop ?? 0) - now.scrollTop;
    const day = this.events.dayAt(now.visitId, now.x, now.y, dy);
    if (day !== this.day) {
      this.day = day;
      this.events.over(now.visitId, day);
    }
    this.events.moved();
  }

  private end(): void {
    clearTimeout(this.timer);
    cancelAnimationFrame(this.frame);
    window.removeEventListener('pointermove', this.onMove);
    window.removeEventListener('pointerup', this.onUp);
    window.removeEventListener('pointercancel', this.onCancel);
    window.removeEventListener('keydown', this.onKey, true);
    this.now = null;
    this.day = null;
    this.ghost = null;
    this.host.requestUpdate();
  }
}

/** The nearest box round an element that scrolls, out of shadow roots too. */
function scrollerOf(element: Element): Element | null {
  for (let at: Node | null = element; at; ) {
    if (at instanceof Element && at.scrollHeight > at.clientHeight) {
      const { overflowY } = getComputedStyle(at);
      if (overflowY === 'auto' || overflowY === 'scroll') return at;
    }
    at =
      at instanceof ShadowRoot
        ? at.host
        : at instanceof Element && at.assignedSlot
          ? at.assignedSlot
          : at.parentNode;
  }
  return null;
}

/**
 * Puts an element that is fixed at the upper left beside a place, px of the page, on the side where there is
 * room. By the object model: the policy of the page allows no style in markup.
 */
export function placeBeside(element: HTMLElement, atX: number, atY: number): void {
  const { offsetWidth: width, offsetHeight: height } = element;
  const x = atX + width + 12 > innerWidth ? atX - width - 8 : atX + 8;
  const y = Math.min(atY + 8, innerHeight - height);
  element.style.transform = `translate(${x}px, ${y}px)`;
}
