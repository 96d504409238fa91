import { StorageError } from '../session/storageError';
import { emptyYard } from '../yard/defaults';
import { rename } from '../yard/edits';
import type { Issue, Yard } from '../yard/types';
import type { AppController, Sample } from './app-controller';
import { saveFile } from './parts/save-file';

/** The yards kept in this browser, and the files that come and go. */
export class YardLibrary {
  /** yards removed since the page was opened, newest first; they can be put back until it is closed. */
  removed: readonly Yard[] = [];

  constructor(private readonly app: AppController) {}

  /** Opens the yard of last time; on a first visit a copy of the first sample. */
  async start(): Promise<void> {
    await this.refresh();
    const { storage, samples } = this.app.services;
    const lastId = (await this.guard(() => storage.lastOpenId())) ?? this.app.entries[0]?.id ?? null;
    if (lastId !== null && this.app.entries.some((entry) => entry.id === lastId)) await this.open(lastId);
    else if (this.app.entries[0]) await this.open(this.app.entries[0].id);
    else if (samples[0]) await this.openSample(samples[0]);
    if (!this.app.isOpen && !this.app.damaged) await this.openNew('My yard');
  }

  async refresh(): Promise<void> {
    this.app.entries = (await this.guard(() => this.app.services.storage.list())) ?? [];
    this.app.notify();
  }

  /** Opens a stored yard; a damaged one is put up for rescue instead. */
  async open(id: string): Promise<void> {
    await this.guard(() => (this.app.isOpen ? this.app.session.flush() : Promise.resolve()));
    const result = await this.guard(() => this.app.services.storage.open(id));
    if (!result) return;
    if (result.ok) {
      await this.take(result.yard, false);
      this.app.fileIssues = result.issues;
    } else {
      this.app.damaged = { id, result };
    }
    this.app.notify();
  }

  /** Stores a yard that is not in the store yet, and puts it on the table. */
  async take(yard: Yard, isNew = true): Promise<void> {
    await this.app.adopt(yard, isNew);
    if (isNew) await this.app.session.flush();
    await this.refresh();
  }

  async openNew(name: string): Promise<void> {
    await this.take(emptyYard(this.app.newId('yard'), name));
  }

  async openSample(sample: Sample): Promise<void> {
    const text = await this.guard(() => sample.load());
    if (text !== undefined) await this.importAsNew(text, sample.name);
  }

  /** Opens the text of a yard's file as a yard of its own. @returns true when a yard came of it. */
  async importAsNew(text: string, name: string): Promise<boolean> {
    const { readGeoJsonText } = await import('../io/readGeoJson');
    const read = readGeoJsonText(text, (prefix: string) => this.app.newId(prefix));
    this.app.fileIssues = read.issues;
    const isEmpty = !read.yard && read.zones.length + read.marks.length === 0;
    if (isEmpty) {
      this.app.notify();
      return false;
    }
    const id = this.app.newId('yard');
    const yard = read.yard
      ? { ...read.yard, id }
      : { ...emptyYard(id, name), zones: read.zones, marks: read.marks };
    await this.take(rename(yard, this.freeYardName(yard.name.trim() || name)));
    return true;
  }

  /** The name, or "name (2)" and so on where a stored yard has it already. @returns a name not taken */
  freeYardName(name: string): string {
    const taken = new Set(this.app.entries.map((entry) => entry.name));
    let free = name;
    for (let count = 2; taken.has(free); count++) free = `${name} (${count})`;
    return free;
  }

  /** Renames a yard, on the table or not. */
  async rename(id: string, name: string): Promise<void> {
    const app = this.app;
    if (app.isOpen && app.yard.id === id) {
      app.dispatch('Rename yard', (yard) => rename(yard, name));
      await this.guard(() => app.session.flush());
    } else {
      const result = await this.guard(() => app.services.storage.open(id));
      if (result?.ok) {
        await this.guard(() =>
          app.services.storage.save(rename(result.yard, name), app.services.now().getTime()),
        );
      }
    }
    await this.refresh();
  }

  /** Removes a yard; it can be put back until the page is closed. */
  async remove(id: string): Promise<void> {
    const { app } = this;
    const { storage } = app.services;
    const isCurrent = app.isOpen && app.yard.id === id;
    if (isCurrent) await this.guard(() => app.session.flush());
    const kept = isCurrent
      ? app.yard
      : await this.guard(() => storage.open(id)).then((it) => (it?.ok ? it.yard : null));
    const name = app.entries.find((entry) => entry.id === id)?.name ?? 'The yard';
    if (isCurrent) {
      const other = app.entries.find((entry) => entry.id !== id);
      if (other) await this.open(other.id);
      if (!app.isOpen || app.yard.id === id) await this.openNew('My yard');
    }
    await this.guard(() => storage.remove(id));
    if (app.damaged?.id === id) app.damaged = null;
    await this.refresh();
    if (kept) this.removed = [kept, ...this.removed];
    app.note(
      'yard-removed',
      `“${name}” was removed from this device.`,
      kept && { label: 'Put it back', run: () => void this.putBack(kept) },
    );
  }

  /** Stores a removed yard again and opens it. */
  async putBack(yard: Yard): Promise<void> {
    this.removed = this.removed.filter((one) => one !== yard);
    await this.take(yard);
  }

  /** Opens what could be rescued in place of the damaged state. */
  async recover(yard: Yard): Promise<void> {
    this.app.damaged = null;
    await this.take(yard);
  }

  /** Goes on with this tab's state beside the one another tab stored. */
  async keepAsCopy(): Promise<void> {
    const { app } = this;
    await this.guard(() => app.session.keepAsCopy(app.newId('yard'), `${app.yard.name} (copy)`));
    await this.refresh();
  }

  /** The yard on the table as a file, handed to the browser's download. */
  async download(): Promise<void> {
    const { yard } = this.app;
    const { fileNameOf, yardToText } = await import('../io/writeGeoJson');
    saveFile(fileNameOf(yard), 'application/geo+json', yardToText(yard));
  }

  /** Runs a storage task; a failure is told in words and gives undefined. */
  private async guard<T>(task: () => Promise<T>): Promise<T | undefined> {
    try {
      return await task();
    } catch (error) {
      const words = error instanceof Error ? error.message : String(error);
      const issue: Issue = {
        code: 'yard-not-reached',
        severity: 'error',
        message: error instanceof StorageError ? words : `That did not work: ${words}.`,
        place: {},
      };
      this.app.tell(issue);
      return undefined;
    }
  }
}
