import { describe, expect, it } from 'vitest';
import { readLabelsCsv } from './readLabelsCsv';
import { writeLabelsCsv } from './writeLabelsCsv';

const HEAD =
  'Product,Form,N (%),Pack volume (fl oz),Use,Applicator,Rate basis,Area per pack (sq ft),Rate by volume (fl oz per 1,000 sq ft)';
/** The heading with its unit in quotes, as it holds a comma (RFC 4180, section 2, rule 6). */
const head = HEAD.replace(
  'Rate by volume (fl oz per 1,000 sq ft)',
  '"Rate by volume (fl oz per 1,000 sq ft)"',
);
const told = (text: string) =>
  readLabelsCsv(text).issues.map(({ place, message }) => [place.line, place.path, message]);

describe('a table of labels', () => {
  it('one bottle with a hose-end and a tank use takes two rows', () => {
    const text = `${head}\r\nIron 6-0-0,ready-to-use,6,32,Hose-end bottle,hose-end,area-per-container,"3,200",\r\nIron 6-0-0,,,,Tank,tank-sprayer,volume-per-area,,10\r\n`;
    const { products, issues } = readLabelsCsv(text);
    expect(issues).toEqual([]);
    expect(products).toHaveLength(1);
    const [iron] = products;
    // NIST Handbook 44, appendix C: 1 fl oz = 29.573 53 mL, 1 sq ft = 0.092 903 04 m²
    expect(iron?.packs[0]?.content.value).toBeCloseTo(0.946353, 6);
    expect(iron?.rate).toMatchObject({ basis: 'area-per-container', packId: 'pack-1' });
    expect(iron?.rate.basis === 'area-per-container' && iron.rate.areaM2).toBeCloseTo(297.289728, 6);
    expect(iron?.otherUses.map((use) => [use.name, use.applicator])).toEqual([['Tank', 'tank-sprayer']]);
    const [tank] = iron?.otherUses ?? [];
    expect(tank?.rate.basis === 'volume-per-area' && tank.rate.rateLPerM2 * 92.90304).toBeCloseTo(
      0.2957353,
      7,
    );
  });

  it('reads metric headings, semicolons and decimal commas', () => {
    const text =
      'Form;Product;Pack weight (kg);Rate basis;Rate by weight (g/m²);Warmest air (°C);Note\nGranular;Korn;12,5;mass per area;2,5;-1,5;"a;b"\n';
    const { products, issues } = readLabelsCsv(text);
    expect(issues).toEqual([]);
    expect(products[0]).toMatchObject({
      name: 'Korn',
      form: 'granular',
      packs: [{ content: { unit: 'kg', value: 12.5 } }],
      rate: { basis: 'mass-per-area', rateKgPerM2: 0.0025 },
      note: 'a;b',
    });
    expect(products[0]?.limits.maxAirTempC).toBe(-1.5);
  });

  it('cells in quotes hold commas, line ends and doubled quotes (RFC 4180, section 2, rules 5 to 7)', () => {
    const text =
      'Product,Form,Note,Rate basis,"Rate by weight (lb per 1,000 sq ft)"\r\n"aaa","granular","b CR\r\nb""b,b","mass-per-area","4"\r\nccc,granular,,mass-per-area,x\r\n';
    const { products, issues } = readLabelsCsv(text);
    expect(products.map((one) => [one.name, one.note])).toEqual([['aaa', 'b CR\r\nb"b,b']]);
    // the quoted line end counts as a line of the file
    expect(issues[0]?.place.line).toBe(4);
  });
});

describe('what is wrong is told with its line and column', () => {
  it.each([
    ['a number', 'Bad,granular,x,,,,volume-per-area,,4', 'N (%)', /“x” is not a number/],
    ['a percent over 100', 'Bad,granular,140,,,,volume-per-area,,4', 'N (%)', /100 % or less/],
    ['a form', 'Bad,lumps,1,,,,volume-per-area,,4', 'Form', /must be one of ready-to-use/],
    [
      'an applicator',
      'Bad,granular,1,,,by-drone,volume-per-area,,4',
      'Applicator',
      /must be one of hose-end/,
    ],
    ['below zero', 'Bad,granular,1,-32,,,volume-per-area,,4', 'Pack volume (fl oz)', /0 fl oz or more/],
    [
      'a rate that is not there',
      'Bad,granular,1,32,,,volume-per-area,,',
      'Rate by volume',
      /nothing stands there/,
    ],
  ])('%s', (_what, row, column, words) => {
    const { products, issues } = readLabelsCsv(`${head}\nGood,granular,1,32,,,volume-per-area,,4\n${row}\n`);
    expect(products.map((one) => one.name)).toEqual(['Good']);
    expect(issues[0]?.place.line).toBe(3);
    expect(issues[0]?.place.path).toContain(column);
    expect(issues[0]?.message).toMatch(words);
    expect(issues.some((issue) => /“Bad” was left out/.test(issue.message))).toBe(true);
  });

  it('a bad row of a further use is left out alone; packs keep their numbers', () => {
    const rows = [
      '1,A,granular,10,,area-per-container,100,2,',
      '1,A,,bad,,,,,',
      '1,A,,30,,area-per-container,100,3,',
      '1,A,,,,volume-per-area,,,4',
    ];
    const title =
      'No.,Product,Form,Pack volume (fl oz),Use,Rate basis,Area per pack (sq ft),Pack that covers it,"Rate by volume (fl oz per 1,000 sq ft)"';
    const { products, issues } = readLabelsCsv([title, ...rows].join('\n'));
    expect(products[0]?.packs.map((pack) => pack.id)).toEqual(['pack-1', 'pack-3']);
    // the first use named the pack that could not be read, so the next one is the first
    expect(products[0]?.rate).toMatchObject({ basis: 'area-per-container', packId: 'pack-3' });
    expect(products[0]?.otherUses).toHaveLength(1);
    expect(issues.map((issue) => issue.place.line)).toEqual([3, 2]);
  });

  it('headings', () => {
    expect(told('Name,Kind\nA,granular\n')[0]?.[2]).toMatch(/no column “Product” and “Form”/);
    expect(told('Product,Form,Density\nA,granular,10\n')[0]?.[2]).toMatch(/Density.*unit.*lb\/gal/);
    expect(told('Product,Form,Density (stone)\nA,granular,10\n')[0]?.[1]).toBe('Density (stone)');
    expect(told('Product,Form,N,N (%)\nA,granular,1,2\n')[0]?.[2]).toMatch(/two columns/);
    expect(told('')[0]?.[2]).toMatch(/empty/);
    expect(told(writeLabelsCsv([], 'us', true))[0]?.[2]).toMatch(/no labels under them/);
    const extra = readLabelsCsv(`${head},Colour\nA,granular,1,32,,,volume-per-area,,4,red\n`);
    expect(extra.products).toHaveLength(1);
    expect(extra.issues.map((issue) => issue.severity)).toEqual(['note']);
  });

  it('a quotation mark that nothing closes, a number read in two ways, a figure that differs', () => {
    expect(told(`${head}\nA,"granular,1,32,,,volume-per-area,,4\n`)[0]).toEqual([
      2,
      undefined,
      'Line 2: a quotation mark is opened and never closed.',
    ]);
    const tabs = told('Product\tForm\tPack weight (lb)\nA\tgranular\t1,500\n');
    expect(tabs[0]?.[2]).toMatch(/two ways/);
    const twice = readLabelsCsv(
      `${head}\nA,granular,1,32,,,volume-per-area,,4\nA,granular,2,,,,volume-per-area,,5\n`,
    );
    expect(twice.products[0]?.analysis.nPct).toBe(1);
    expect(twice.issues).toMatchObject([{ severity: 'warning', place: { line: 3, path: 'N (%)' } }]);
  });

  it('text that a spreadsheet would run is guarded and comes back', () => {
    const formula = readLabelsCsv(
      `Product,Form,Rate basis,"Rate by weight (lb per 1,000 sq ft)"\n'=1+1,granular,mass-per-area,4\n`,
    ).products;
    expect(formula[0]?.name).toBe('=1+1');
    expect(writeLabelsCsv(formula, 'us', true)).toContain(",'=1+1,");
  });
});
