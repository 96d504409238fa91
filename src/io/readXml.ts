import { DOMParser, type Document, type Element } from '@xmldom/xmldom';
import type { Issue } from '../yard/types';
import { importIssue } from './importTypes';

/** XML longer than this is not read, characters. */
export const MOST_XML_CHARS = 120_000_000;
/** Elements nested deeper than this are not read. */
const DEEPEST = 200;

/**
 * Parses XML without ever taking a document type: so no entity can expand and none can name a file.
 * @returns the document, or an issue that tells where it breaks off
 */
export function parseXml(
  text: string,
): { readonly ok: true; readonly document: Document } | { readonly ok: false; readonly issue: Issue } {
  const fail = (code: string, message: string, place: Issue['place'] = {}) => ({
    ok: false as const,
    issue: importIssue(code, 'error', message, place),
  });
  if (text.length > MOST_XML_CHARS) return fail('too-big', 'The XML is longer than 120 million characters.');
  if (/<!(DOCTYPE|ENTITY)/i.test(text)) {
    return fail(
      'xml-doctype',
      'The file declares a document type (<!DOCTYPE …>), which can pull in other files or grow without end. It is not read.',
    );
  }
  if (depthOf(text) > DEEPEST) {
    return fail(
      'xml-too-deep',
      `The file nests more than ${DEEPEST} elements in each other and is not read.`,
    );
  }
  let trouble = '';
  try {
    const parser = new DOMParser({
      onError: (level, message) => {
        if (level !== 'warning' && trouble === '') trouble = String(message);
      },
    });
    const document = parser.parseFromString(text.replace(/^\uFEFF/, ''), 'text/xml');
    if (trouble === '' && document.documentElement) return { ok: true, document };
  } catch (error) {
    trouble ||= error instanceof Error ? error.message : String(error);
  }
  const line = /line:?\s*(\d+)/i.exec(trouble)?.[1];
  const where = line === undefined ? '' : ` near line ${line}`;
  return fail(
    'bad-xml',
    `The file is not well-formed XML: it cannot be read${where}.`,
    line === undefined ? {} : { line: Number(line) },
  );
}

/** How deep elements nest, by their tags alone; comments and CDATA are passed over. */
function depthOf(text: string): number {
  const tags = /<!--[\s\S]*?-->|<!\[CDATA\[[\s\S]*?\]\]>|<\/|<[^\s>/!?][^>]*?(\/?)>/g;
  let depth = 0;
  let deepest = 0;
  for (let tag = tags.exec(text); tag !== null; tag = tags.exec(text)) {
    if (tag[0] === '</') depth -= 1;
    else if (!tag[0].startsWith('<!') && tag[1] !== '/') {
      depth += 1;
      if (depth > deepest) deepest = depth;
      if (deepest > DEEPEST) break;
    }
  }
  return deepest;
}

/** Elements of a local name anywhere below, in document order, whatever their prefix. */
export function elementsNamed(node: Document | Element, name: string): Element[] {
  return Array.from(node.getElementsByTagNameNS('*', name));
}

/** Text of the first child element of that local name; '' when there is none. */
export function childText(node: Element, name: string): string {
  for (let child = node.firstChild; child; child = child.nextSibling) {
    if (child.nodeType === 1 && (child as Element).localName === name) return child.textContent?.trim() ?? '';
  }
  return '';
}
