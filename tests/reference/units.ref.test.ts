import { describe, expect, it } from 'vitest';
import { type Quantity, unitChoices } from '../../src/units/choices';
import { K_PER_K2O, P_PER_P2O5 } from '../../src/units/factors';
import { formatArea, formatMass, formatVolume } from '../../src/units/format';
import { parseArea, parseLength, parseMass, parseVolume } from '../../src/units/parse';
import type { UnitSystem } from '../../src/yard/types';

/*
 * Our units against the published ones. `tolerance` is relative; 1e-12 stands for floating point alone.
 */
const FLOAT = 1e-12;

function toSI(quantity: Quantity, system: UnitSystem, id: string, value: number): number {
  const choice = unitChoices(quantity, system).find((one) => one.id === id);
  if (choice === undefined) throw new Error(`no unit ${id}`);
  return choice.toSI(value);
}
function read(parsed: ReturnType<typeof parseLength>): number {
  if (!parsed.ok) throw new Error(parsed.message);
  return parsed.value;
}
const per1000 = (what: string) => `${what} per 1,000 sq ft`;

interface Row {
  readonly what: string;
  readonly ours: number;
  readonly published: number;
  readonly tolerance: number;
  readonly source: string;
}
const ROWS: readonly Row[] = [
  {
    what: '1 ft in m',
    ours: read(parseLength('1 ft', 'us')),
    published: 0.3048,
    tolerance: FLOAT, // exact by definition
    source: 'NIST/NOAA, Federal Register notice 2020-21902, 5 Oct 2020',
  },
  {
    what: '1,000 sq ft in m²',
    ours: read(parseArea('1,000 sq ft', 'us')),
    published: 92.90304,
    tolerance: FLOAT, // 0.3048² × 1,000, exact
    source: 'NIST/NOAA, Federal Register notice 2020-21902, 5 Oct 2020',
  },
  {
    what: '1 acre in m²',
    ours: toSI('area', 'us', 'acre', 1),
    published: 4046.8564224,
    tolerance: FLOAT, // 43,560 international sq ft, exact
    source: 'NIST Handbook 44, appendix C (from memory); 43,560 sq ft: CIA World Factbook, appendix G',
  },
  {
    what: '1 gal in L',
    ours: read(parseVolume('1 gal', 'us')),
    published: 231 * 0.016387064,
    tolerance: FLOAT, // 231 cubic inches of 16.387064 mL, exact
    source: 'NIST Handbook 44, appendix C, section 5',
  },
  {
    what: '1 fl oz in L',
    ours: toSI('volume', 'us', 'fl oz', 1),
    published: 0.0295735295625,
    tolerance: FLOAT, // gallon / 128, exact
    source: 'NIST Handbook 44, appendix C (from memory)',
  },
  {
    what: '1 lb in kg',
    ours: read(parseMass('1 lb', 'us')),
    published: 0.45359237,
    tolerance: FLOAT, // exact by definition
    source: 'NIST SP 811, appendix B (from memory)',
  },
  {
    what: 'acre-inch in gal',
    ours:
      (toSI('area', 'us', 'acre', 1) * toSI('depth', 'us', 'in', 1) * 1000) / toSI('volume', 'us', 'gal', 1),
    published: 27154,
    tolerance: 0.5 / 27154, // printed to the whole gallon
    source: 'turfgrass professional maths worksheet (author not shown)',
  },
  {
    what: 'acre-inch in cu ft',
    ours:
      (toSI('area', 'us', 'acre', 1) * toSI('depth', 'us', 'in', 1) * 1000) /
      toSI('volume', 'us', 'cu ft', 1),
    published: 3630,
    tolerance: FLOAT, // 43,560 / 12, exact
    source: 'turfgrass professional maths worksheet (author not shown)',
  },
  {
    what: '1.5 gal per 1,000 sq ft in gal per acre',
    ours:
      toSI('volume-per-area', 'us', per1000('gal'), 1.5) / toSI('volume-per-area', 'us', 'gal per acre', 1),
    published: 65,
    tolerance: 0.5 / 65, // printed to the whole gallon
    source: 'list posting citing Virginia Tech',
  },
  {
    what: '40 gal per acre in gal per 1,000 sq ft',
    ours:
      toSI('volume-per-area', 'us', 'gal per acre', 40) / toSI('volume-per-area', 'us', per1000('gal'), 1),
    published: 0.92,
    tolerance: 0.005 / 0.92, // printed to two decimals
    source: 'Gerken, OSU-OKC, 2013',
  },
  {
    what: '3.6 pt per acre in fl oz per 1,000 sq ft',
    ours:
      read(parseVolume('3.6 pt', 'us')) /
      toSI('area', 'us', 'acre', 1) /
      toSI('volume-per-area', 'us', per1000('fl oz'), 1),
    published: 1.3,
    tolerance: 0.05 / 1.3, // printed to one decimal
    source: 'Gerken, OSU-OKC, 2013',
  },
  {
    what: '3.6 lb per 1,000 sq ft in lb per acre',
    ours: toSI('mass-per-area', 'us', per1000('lb'), 3.6) / toSI('mass-per-area', 'us', 'lb per acre', 1),
    published: 156.8,
    tolerance: 0.05 / 156.8, // one decimal
    source: 'turfgrass professional maths worksheet (author not shown), middle step computed by hand',
  },
  {
    what: 'P in P2O5',
    ours: P_PER_P2O5,
    published: 0.4365,
    tolerance: 0.0005 / 0.4365, // printed sheets differ in the fourth decimal (0.4364, 0.4365)
    source: 'Virginia Tech SPES-201NP, table 1',
  },
  {
    what: 'P2O5 from P',
    ours: 1 / P_PER_P2O5,
    published: 2.291,
    tolerance: 0.0005, // the rounding of the factor above
    source: 'Virginia Tech SPES-201NP, table 1',
  },
  {
    what: 'K in K2O',
    ours: K_PER_K2O,
    published: 0.8301,
    tolerance: 0.0001 / 0.8301, // four decimals, cut
    source: 'Virginia Tech SPES-201NP, table 1',
  },
  {
    what: 'K2O from 49.8 % K',
    ours: 49.8 / K_PER_K2O,
    published: 60,
    tolerance: 0.05 / 60, // worked to three digits
    source: 'Virginia Tech SPES-201NP',
  },
];

describe('published units', () => {
  it.each(ROWS)('$what ($source)', ({ ours, published, tolerance }) => {
    expect(Math.abs(ours / published - 1)).toBeLessThanOrEqual(tolerance);
  });
});

describe('what a person reads', () => {
  const plain = (text: string) => text.replaceAll('\u00a0', ' ');
  // NIST Handbook 44, appendix C (from memory): 128 fl oz to the gallon, 16 oz to the pound, 43,560 sq ft to the acre
  it('the larger unit stands from one of it up', () => {
    expect(plain(formatVolume(3.785411784, 'us'))).toBe('1 gal');
    expect(plain(formatVolume(3.785411784 / 2, 'us'))).toBe('64 fl oz');
    expect(plain(formatMass(0.45359237, 'us'))).toBe('1 lb');
    expect(plain(formatMass(0.45359237 / 4, 'us'))).toBe('4 oz');
    expect(plain(formatArea(4046.8564224, 'us'))).toBe('1 acre');
    expect(plain(formatArea(4046.8564224 / 2, 'us', 5))).toBe('21,780 sq ft');
  });
});
