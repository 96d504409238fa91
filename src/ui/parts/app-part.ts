import { LitElement } from 'lit';
import { property } from 'lit/decorators.js';
import type { AppController } from '../app-controller';
import { shared } from './shared';

/** What every part of the shell has: the controller, and `rev`, which grows at each change. */
export class AppPart extends LitElement {
  static override styles = [shared];

  @property({ attribute: false }) app!: AppController;
  @property({ attribute: false }) rev = 0;
}

/** The value of the field an event came from. */
export function fieldValue(event: Event): string {
  return (event.target as HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement).value;
}

/** Whether the box an event came from is ticked. */
export function isTicked(event: Event): boolean {
  return (event.target as HTMLInputElement).checked;
}
