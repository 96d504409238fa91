/** Stands for the page's own address; by RFC 6761, section 6.4, no host ever has this name. */
const OWN = 'https://own.invalid/';
/** Carried within the file, made by this page, or shipped with the program: no host is asked. */
const WITHOUT_HOST = /^(data:image\/|blob:|sample:)/i;
/** Parts of a tile address that are filled in with numbers. */
const NUMBERS = ['x', 'y', '-y', 'z'];
/** What the others become: a letter of the subdomain, and nothing or a mark for fine screens. */
const FILLINGS = [
  { s: 'a', r: '' },
  { s: 'a', r: '@2x' },
] as const;

/**
 * Which host an address of a base layer would have this device ask, as a browser reads it: backslashes
 * count as slashes, tabs and line ends are dropped (WHATWG URL, section 4.4), and parts in braces are
 * filled in first, so that `/{r}/host/` is `//host/`.
 * @param address of tiles, of a map service or of a picture
 * @returns the host, or the address itself where its host cannot be told; null when it stays with the
 * page's own
 */
export function foreignHost(address: string): string | null {
  if (WITHOUT_HOST.test(address)) return null;
  for (const filling of FILLINGS) {
    let strange = false;
    const filled = address.replace(/\{([^{}]*)\}/g, (_all, part: string) => {
      const key = part.trim();
      if (NUMBERS.includes(key)) return '1';
      if (key === 's' || key === 'r') return filling[key];
      strange = true;
      return '';
    });
    if (strange) return address;
    const url = parseUrl(filled);
    if (url === null || url.origin !== new URL(OWN).origin) return url?.host || address;
  }
  return null;
}

function parseUrl(text: string): URL | null {
  try {
    return new URL(text, OWN);
  } catch {
    return null;
  }
}
