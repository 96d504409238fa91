/** One tile of a picture's pyramid. */
export interface TileKey {
  /** 0 is full size, each next one half of it. */
  readonly level: number;
  readonly col: number;
  readonly row: number;
}

/** What the decoded tiles may hold together, bytes (four a pixel). */
const MEMORY_BYTES = 112_000_000;
/** Tiles read and decoded at one time. */
const AT_ONCE = 4;

const nameOf = ({ level, col, row }: TileKey) => `${level}/${col}/${row}`;

/**
 * Decoded tiles of one picture, the least lately used given up first. Reading is asked for by `want`,
 * which replaces what was wanted before: tiles no longer in view are not read.
 */
export class TileCache {
  private readonly kept = new Map<string, ImageBitmap>();
  private wanted: readonly TileKey[] = [];
  private readonly reading = new Set<string>();
  /** tiles without a visible pixel are not stored; damaged ones count with them. */
  private readonly empty = new Set<string>();
  private bytes = 0;
  private isClosed = false;

  /**
   * @param read gives a tile's file, or null for a tile that holds nothing
   * @param onTile a wanted tile is ready
   * @param onLost a wanted tile could not be read or is damaged
   */
  constructor(
    private readonly read: (key: TileKey) => Promise<Blob | null>,
    private readonly onTile: (key: TileKey) => void,
    private readonly onLost: () => void,
    private readonly memoryBytes = MEMORY_BYTES,
  ) {}

  /** The tile if it is ready; it counts as just used. */
  get(key: TileKey): ImageBitmap | undefined {
    const name = nameOf(key);
    const bitmap = this.kept.get(name);
    if (bitmap) {
      this.kept.delete(name);
      this.kept.set(name, bitmap);
    }
    return bitmap;
  }

  /** Known to hold nothing that could be shown. */
  isEmpty(key: TileKey): boolean {
    return this.empty.has(nameOf(key));
  }

  /** Nothing that was wanted is still to come. */
  get isIdle(): boolean {
    return this.reading.size === 0 && this.wanted.length === 0;
  }

  /** Reads these tiles, first things first. */
  want(keys: readonly TileKey[]): void {
    this.wanted = keys.filter((key) => {
      const name = nameOf(key);
      return !this.kept.has(name) && !this.reading.has(name) && !this.empty.has(name);
    });
    this.readNext();
  }

  close(): void {
    this.isClosed = true;
    this.wanted = [];
    for (const bitmap of this.kept.values()) bitmap.close();
    this.kept.clear();
  }

  private readNext(): void {
    while (this.reading.size < AT_ONCE) {
      const [key, ...rest] = this.wanted;
      if (!key) return;
      this.wanted = rest;
      void this.load(key);
    }
  }

  private async load(key: TileKey): Promise<void> {
    const name = nameOf(key);
    this.reading.add(name);
    let bitmap: ImageBitmap | null = null;
    let isDamaged = false;
    try {
      const blob = await this.read(key);
      bitmap = blob && (await createImageBitmap(blob));
    } catch {
      isDamaged = true;
    }
    this.reading.delete(name);
    if (this.isClosed) {
      bitmap?.close();
      return;
    }
    if (bitmap) {
      this.keep(name, bitmap);
      this.onTile(key);
    } else {
      this.empty.add(name);
      if (isDamaged) this.onLost();
    }
    this.readNext();
  }

  private keep(name: string, bitmap: ImageBitmap): void {
    this.kept.set(name, bitmap);
    this.bytes += 4 * bitmap.width * bitmap.height;
    for (const [oldest, old] of this.kept) {
      if (this.bytes <= this.memoryBytes || oldest === name) return;
      this.kept.delete(oldest);
      this.bytes -= 4 * old.width * old.height;
      old.close();
    }
  }
}
