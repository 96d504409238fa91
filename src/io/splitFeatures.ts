const QUOTE = 34;
const BACKSLASH = 92;
const OPEN = 123;
const CLOSE = 125;
const OPEN_LIST = 91;
const CLOSE_LIST = 93;
const NEW_LINE = 10;

/** One item of the list of features: its text, and the line (from 1) on which it begins. */
export interface FeatureText {
  readonly text: string;
  readonly line: number;
}

/** Takes the text of a GeoJSON file piece by piece and gives the features as they end. */
export interface FeatureSplitter {
  push(piece: string): void;
  /** text of the file with the items of `features` left out; call it after the last piece. */
  rest(): string;
  /** the file ended where it should. */
  isWhole(): boolean;
}

/**
 * Splits the `features` list of a GeoJSON collection (RFC 7946, section 3.3) without parsing the whole
 * file: braces are counted outside of strings. Other roots (a Feature, a geometry) stay in `rest`.
 * @param found called for each object in the list, in order
 */
export function createFeatureSplitter(found: (feature: FeatureText) => void): FeatureSplitter {
  let depth = 0;
  let isInString = false;
  let isEscaped = false;
  /** depth of the items of `features`; 0 until the list opens and after it closes. */
  let itemDepth = 0;
  let isOver = false;
  let line = 1;
  let itemLine = 1;
  /** text of the item under way from earlier pieces. */
  let pending = '';
  let isInItem = false;
  let rest = '';
  let key = '';

  const push = (piece: string): void => {
    let itemStart = 0;
    let restStart = 0;
    for (let i = 0; i < piece.length; i++) {
      const code = piece.charCodeAt(i);
      if (code === NEW_LINE) line += 1;
      if (isInString) {
        if (isEscaped) isEscaped = false;
        else if (code === BACKSLASH) isEscaped = true;
        else if (code === QUOTE) isInString = false;
        if (depth === 1) key += piece[i];
        continue;
      }
      if (code === QUOTE) {
        isInString = true;
        if (depth === 1) key = '"';
      } else if (code === OPEN || code === OPEN_LIST) {
        const isList = code === OPEN_LIST;
        if (isList && depth === 1 && !isOver && key === '"features"') itemDepth = 2;
        else if (!isList && itemDepth > 0 && depth === itemDepth) {
          rest += piece.slice(restStart, i);
          isInItem = true;
          itemStart = i;
          itemLine = line;
        }
        depth += 1;
      } else if (code === CLOSE || code === CLOSE_LIST) {
        depth -= 1;
        if (isInItem && depth === itemDepth) {
          found({ text: pending + piece.slice(itemStart, i + 1), line: itemLine });
          pending = '';
          isInItem = false;
          restStart = i + 1;
        } else if (itemDepth > 0 && depth < itemDepth) {
          itemDepth = 0;
          isOver = true;
        }
      }
    }
    if (isInItem) pending += piece.slice(itemStart);
    else rest += piece.slice(restStart);
  };

  return {
    push,
    rest: () => withoutCommas(rest),
    isWhole: () => depth === 0 && !isInString && !isInItem,
  };
}

/** The commas that parted the items left out. */
function withoutCommas(rest: string): string {
  return rest.replace(/("features"\s*:\s*\[)[\s,]*\]/, '$1]');
}
