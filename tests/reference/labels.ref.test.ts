import { effectiveLimePct, FINENESS_TABLES } from '../../src/plan/limeValue';
import { pureLivePct } from '../../src/plan/pureLiveSeed';
import { planOne, testPack, testProduct, testUse } from '../../src/plan/testDose';
import type { DoseFigures } from '../../src/plan/types';
import {
  acres,
  cuft,
  cuyd,
  density,
  floz,
  gal,
  holdRows,
  inches,
  lb,
  lbPer1000,
  pints,
  read,
  sqft,
} from './holdRows';

/*
 * Published worked examples of labels that go by more than weight: seed, lime, layers, mixes. Each is typed in as its source
 * has it and planned by the program. Tolerances are absolute, in the unit of the source; the comment says
 * why they are so wide.
 * After each source: (read) its own text was read; (copy) read where others quote it; (memory) recalled
 * and not read again; (weak) read, but neither a university nor an authority.
 */

const sack = testPack({ unit: 'kg', value: lb(50) });

// --- seed by its pure live seed

const seed = (purityPct: number, germinationPct: number, lbPls: number, areaSqFt: number) =>
  planOne(
    testProduct({
      form: 'seed',
      seed: { purityPct, germinationPct },
      rate: { basis: 'pure-live-seed', rateKgPerM2: lbPer1000(lbPls) },
      packs: [sack],
    }),
    sqft(areaSqFt),
  ).amount.value / lb(1);

holdRows('seed by its pure live seed', [
  [
    '48 % pure, 80 % germinates: share',
    pureLivePct({ purityPct: 48, germinationPct: 80 }),
    38,
    0.5,
    'LSU AgCenter, Pure Live Seed Calculation (read)',
  ], // printed 0.38
  [
    'the same, 1 lb PLS on 1,000 sq ft, 20,000 sq ft: lb of the bag',
    seed(48, 80, 1, 20_000),
    52.6,
    0.6,
    'LSU AgCenter, Pure Live Seed Calculation (read)',
  ], // source divides by its rounded 0.38; unrounded 52.08
  [
    '85 % pure, 75 % germinates: lb for 1 lb of pure live seed',
    seed(85, 75, 1, 1000),
    1.56,
    0.01,
    'Texas Department of Transportation, Pure live seed (read)',
  ], // source divides by its rounded 0.64; unrounded 1.569
  [
    '31 % pure, 80 % germinates: share',
    pureLivePct({ purityPct: 31, germinationPct: 80 }),
    24.8,
    1e-9,
    'Univ. of Minnesota Extension, Purchasing Seed, table 5.2 (read)',
  ], // exact
  [
    '95 % pure, 85 % germinates: share',
    pureLivePct({ purityPct: 95, germinationPct: 85 }),
    81,
    0.5,
    'Cornell University, sports fields, Seeding rates (read)',
  ], // whole percents
  [
    '96 % pure, 91 % germinates: share',
    pureLivePct({ purityPct: 96, germinationPct: 91 }),
    87.36,
    1e-9,
    'Rangelands Gateway glossary, Pure Live Seed (read)',
  ], // exact
]);

// --- lime by its effective neutralising value

const lime = (limePct: number, lbEffective: number, areaSqFt: number) =>
  planOne(
    testProduct({
      limePct,
      rate: { basis: 'effective-lime', rateKgPerM2: lb(lbEffective) / sqft(areaSqFt) },
      packs: [sack],
    }),
    sqft(areaSqFt),
  ).amount.value / lb(1);
const table = (id: string) => {
  const found = FINENESS_TABLES.find((each) => each.id === id);
  if (found === undefined) throw new Error(id);
  return found;
};
const effective = (ccePct: number, id: string, passing: readonly number[], moisturePct = 0) =>
  read(
    effectiveLimePct(
      ccePct,
      table(id).meshes.map((mesh, i) => ({ mesh, passingPct: passing[i] ?? Number.NaN })),
      table(id),
      moisturePct,
    ),
  );
const UNL = 'Univ. of Nebraska-Lincoln, Plant and Soil Sciences, liming materials, table 4.4 (read)';
const IOWA =
  'Sawyer, Iowa State University, in Laboski, Univ. of Wisconsin-Madison, Liming Terminology and Analysis (copy)';
const iowa = { cce: 92, moisture: 2, passing: [100, 90, 55] } as const;

holdRows('lime', [
  [
    '75 lb on 1,000 sq ft by a lime of 80: lb',
    lime(80, 75, 1000),
    94,
    0.5,
    'Penn State, Ag Analytical Services Lab, Home Lawn (read)',
  ], // whole pounds; 93.75
  [
    '5 lb on 100 sq ft by a lime of 70: lb',
    lime(70, 5, 100),
    7,
    0.5,
    'Penn State, Ag Analytical Services Lab, Home Garden (read)',
  ], // whole pounds; 7.14
  ['a ton of pure calcium carbonate by magnesium carbonate, 119: lb', lime(119, 2000, 43_560), 1680, 1, UNL], // rounded to tens
  ['by calcium hydroxide, 135: lb', lime(135, 2000, 43_560), 1480, 2, UNL], // rounded to tens
  ['by calcium oxide, 178: lb', lime(178, 2000, 43_560), 1120, 4, UNL], // source from the weights 56 and 100, 178.6
  ['by magnesium oxide, 250: lb', lime(250, 2000, 43_560), 800, 1e-9, UNL], // exact
  [
    'a rate for a lime of 80 done by one of 65: times',
    lime(65, 80, 1000) / 100,
    1.2,
    0.05,
    'practice question of a crop adviser examination (copy)',
  ], // one decimal; 1.23
  // Cornell: of what passes 100 mesh all works in a year, of 60 to 100 mesh 80 %, of 20 to 60 mesh 40 %
  [
    'New York: pure, all through 100 mesh',
    effective(100, 'new-york', [100, 100, 100]),
    100,
    1e-9,
    table('new-york').source,
  ],
  [
    'New York: pure, all of 60 to 100 mesh',
    effective(100, 'new-york', [100, 100, 0]),
    80,
    1e-9,
    table('new-york').source,
  ],
  [
    'New York: pure, all of 20 to 60 mesh',
    effective(100, 'new-york', [100, 0, 0]),
    40,
    1e-9,
    table('new-york').source,
  ],
  // P3762: half of what passes 10 mesh and not 50, all that passes 50, nothing coarser than 10
  [
    'Mississippi: pure, all of 10 to 50 mesh',
    effective(100, 'mississippi', [100, 0]),
    50,
    1e-9,
    table('mississippi').source,
  ],
  [
    'Mississippi: pure, nothing through 10 mesh',
    effective(100, 'mississippi', [0, 0]),
    0,
    1e-9,
    table('mississippi').source,
  ],
  // 100 % through 4 mesh, 90 % through 8, 55 % through 60; 92 % CCE, 2 % moisture
  ['Iowa: fineness efficiency', effective(100, 'iowa', iowa.passing), 70, 1e-9, IOWA], // exact
  ['Iowa: effective percent', effective(iowa.cce, 'iowa', iowa.passing, iowa.moisture), 63, 0.5, IOWA], // whole percents
  [
    'Iowa: lb effective in a ton',
    20 * effective(iowa.cce, 'iowa', iowa.passing, iowa.moisture),
    1260,
    5,
    IOWA,
  ], // tens
]);

// --- mulch and topdressing by depth

const layer = (depthIn: number, areaSqFt: number) =>
  planOne(
    testProduct({
      form: 'topdressing',
      rate: { basis: 'depth', depthM: inches(depthIn) },
      packs: [testPack({ unit: 'L', value: cuft(2) })],
    }),
    sqft(areaSqFt),
  ).amount.value;
const COVERAGE = 'coverage table printed alike by guides to mulch and compost (weak)';
const sand = planOne(
  testProduct({
    form: 'topdressing',
    densityKgPerL: density(100, 'lb/cu ft'),
    rate: { basis: 'mass-per-area', rateKgPerM2: lbPer1000(100) },
    packs: [testPack({ unit: 'L', value: cuyd(1) })],
  }),
  sqft(1000),
);

holdRows('layers', [
  [
    '2 in on 350 ft by 200 ft: cu yd',
    layer(2, 70_000) / cuyd(1),
    434,
    2,
    'Cornell Composting, calculation of compost needed (read)',
  ], // source’s factor 0.0031 is 1/324 rounded up; unrounded 432.1
  [
    '1/4 in on 1,000 sq ft: cu yd',
    layer(0.25, 1000) / cuyd(1),
    0.75,
    0.03,
    'Cumberland County Soil & Water Conservation District, topdressing (copy)',
  ], // “roughly”; 0.772
  ['1 in on 324 sq ft: cu yd', layer(1, 324) / cuyd(1), 1, 1e-9, COVERAGE], // exact
  ['3 in on 108 sq ft: cu yd', layer(3, 108) / cuyd(1), 1, 1e-9, COVERAGE], // exact
  ['4 in on 81 sq ft: cu yd', layer(4, 81) / cuyd(1), 1, 1e-9, COVERAGE], // exact
  ['2 in on 1,000 sq ft: cu yd', layer(2, 1000) / cuyd(1), 6.17, 0.005, COVERAGE], // two decimals
  [
    '100 lb of dry sand on 1,000 sq ft: cu ft',
    sand.amount.value / cuft(1),
    1,
    1e-9,
    'Daniels, USGA Green Section, 17 Aug 2018 (read)',
  ], // “about 100 pounds” a cubic foot
]);

// --- mixes in a tank: one label, a ready-to-use bottle and the same liquid from a tank

const twoWays = (rateLPerM2: number, carrierLPerM2: number) =>
  testProduct({
    form: 'ready-to-use',
    applicator: 'hose-end',
    rate: { basis: 'area-per-container', areaM2: sqft(3200), packId: 'bottle' },
    packIds: ['bottle'],
    packs: [
      testPack({ unit: 'L', value: floz(32) }, 'bottle'),
      testPack({ unit: 'L', value: gal(2.5) }, 'jug'),
    ],
    otherUses: [
      testUse({
        id: 'tank',
        applicator: 'tank-sprayer',
        rate: { basis: 'volume-per-area', rateLPerM2 },
        carrierLPerM2,
        carrierIsTotal: true,
        packIds: ['jug'],
      }),
    ],
  });
const tankMix = (figures: DoseFigures) => figures.tank?.full?.product.value ?? Number.NaN;
const gerken = twoWays(pints(3.6) / acres(1), gal(40) / acres(1));
const handheld = twoWays(pints(3) / acres(1), gal(1.5) / sqft(1000));
const GERKEN =
  'Gerken, Oklahoma State University-Oklahoma City, Calibrating Application Equipment, 2013 (copy)';
const GARDENERS = 'posting on hand-held sprayers that cites Virginia Tech 456-502 (copy)';

holdRows('mixes', [
  [
    '3.6 pints an acre on 25 acres: gal',
    planOne(gerken, acres(25), { useId: 'tank' }).amount.value / gal(1),
    11.25,
    1e-9,
    GERKEN,
  ], // exact
  [
    'the same at 40 gal an acre: pints in 40 gal',
    tankMix(planOne(gerken, acres(25), { useId: 'tank', tankL: gal(40) })) / pints(1),
    3.6,
    1e-9,
    GERKEN,
  ], // exact
  [
    'the same on 1,000 sq ft: fl oz',
    planOne(gerken, sqft(1000), { useId: 'tank' }).amount.value / floz(1),
    1.3,
    0.05,
    GERKEN,
  ], // one decimal
  [
    '3 pints an acre at 1.5 gal on 1,000 sq ft: fl oz in a gallon',
    tankMix(planOne(handheld, acres(1), { useId: 'tank', tankL: gal(1) })) / floz(1),
    0.74,
    0.01,
    GARDENERS,
  ], // source divides by its rounded 65 gal an acre
  [
    'bottles of 3,200 sq ft on 6,400 sq ft',
    planOne(gerken, sqft(6400)).containers[0]?.open ?? Number.NaN,
    2,
    0,
    'common practice, no source',
  ],
]);
