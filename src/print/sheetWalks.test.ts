import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { VisitCoverage } from '../cover/passTypes';
import { testWalk } from '../cover/testWalk';
import { deriveYard } from '../session/derive';
import '../session/deriveVisit';
import { yardFromGeoJson } from '../yard/codec';
import { newEquipment } from '../yard/defaults';
import { defaultSheetOptions, sheetModel } from './sheetModel';
import type { Block, MapPage, SheetOptions } from './types';

const file = readFileSync(new URL('../../sample-geojson/corner-lot.geojson', import.meta.url), 'utf8');
const { yard } = yardFromGeoJson(JSON.parse(file));
if (!yard) throw new Error('the sample cannot be read');
const derived = deriveYard(yard);
const visitId = yard.visits[0]?.id ?? '';
const visit = derived.visit(visitId);
if (!visit) throw new Error('the sample has no visit');

const SWATH_M = 2;
/** Each dose of the visit walked from a few bottles. */
function coverageOf(coats: 1 | 2, bottles = 3): VisitCoverage {
  return {
    visitId,
    doses: (visit?.figures.doses ?? []).map(({ dose, zones }) => {
      const grounds = zones.map(({ zoneId }) => ({
        zoneId,
        parts: visit?.treated.get(zoneId)?.planeParts ?? [],
      }));
      return { ...testWalk(grounds, SWATH_M, bottles, coats), doseId: dose.id };
    }),
  };
}
const coverage = coverageOf(1);
const modelOf = (options: Partial<SheetOptions> = {}, given: VisitCoverage | null = coverage) =>
  sheetModel(yard, derived, visitId, { ...defaultSheetOptions('2027-05-01'), ...options }, given);
const mapsOf = (model: ReturnType<typeof modelOf>) =>
  model.pages.filter((page): page is MapPage => page.type === 'map');
const blocksOf = (model: ReturnType<typeof modelOf>) =>
  model.pages.flatMap((page): readonly Block[] => (page.type === 'tables' ? page.blocks : []));

describe('walks on the sheet', () => {
  it('give each product a map of its own after that of the zones', () => {
    const maps = mapsOf(modelOf());
    expect(maps.length).toBe(1 + coverage.doses.length);
    expect(maps[0]?.title).toMatch(/^Zone map/);
    visit.figures.doses.forEach(({ product }, i) => {
      expect(maps[i + 1]?.title).toContain(product.name);
    });
    const words = JSON.stringify(maps.map(({ margin }) => margin));
    for (let i = 1; i <= maps.length; i++) expect(words).toContain(`"${i} of ${modelOf().pages.length}"`);
  });
  it('draw one dose alone where it is chosen', () => {
    const doseId = visit.figures.doses[1]?.dose.id ?? '';
    const model = modelOf({ doseId });
    expect(mapsOf(model).length).toBe(2);
    const captions = blocksOf(model).flatMap((block) => (block.type === 'table' ? block.caption : []));
    expect(new Set(captions.filter((text) => text.startsWith('Run-out marks'))).size).toBe(1);
  });
  it('part the two coats, which cannot be read on each other', () => {
    const model = modelOf({}, coverageOf(2));
    expect(mapsOf(model).length).toBe(1 + 2 * coverage.doses.length);
    const roles = (page: MapPage | undefined) =>
      page?.ground.flatMap((one) => (one.type === 'line' ? one.role : [])) ?? [];
    expect(roles(mapsOf(model)[1])).toContain('walk-pass');
    expect(roles(mapsOf(model)[1])).not.toContain('walk-cross');
    expect(roles(mapsOf(model)[2])).toContain('walk-cross');
    expect(roles(mapsOf(model)[2])).not.toContain('walk-pass');
  });
  it('stand at the scale of the page: level passes lie a swath apart', () => {
    const page = mapsOf(modelOf())[1];
    const passes = page?.ground.find((one) => one.type === 'line' && one.role === 'walk-pass');
    if (!page || passes?.type !== 'line') throw new Error('no passes are drawn');
    const ys = [...passes.d.matchAll(/M[-\d.]+ ([-\d.]+)L/g)].map((match) => Number(match[1]));
    const gaps = ys.slice(1).map((y, i) => Math.abs(y - (ys[i] ?? 0)));
    const swathMm = (SWATH_M * 1000) / page.ratio;
    expect(gaps.filter((gap) => Math.abs(gap - swathMm) < 0.01).length).toBeGreaterThan(gaps.length / 2);
  });
  it('list every mark once, with a box to tick and room for what was really left', () => {
    const model = modelOf({ doseId: coverage.doses[0]?.doseId ?? null });
    const rows = blocksOf(model).flatMap((block) =>
      block.type === 'table' && block.caption.startsWith('Run-out marks') ? block.rows : [],
    );
    const marks = coverage.doses[0]?.marks ?? [];
    expect(marks.length).toBe(12);
    expect(rows.filter(([, sign]) => sign !== '').length).toBe(marks.length);
    for (const [box, , where, level, real] of rows) {
      expect([box, real]).toEqual(['☐', '']);
      expect(where).not.toBe('');
      expect(level).not.toBe('');
    }
    expect(rows.map(([, sign]) => sign)).toContain('2 out');
  });
  it('put every run-out on its map, clear of edges and of each other', () => {
    for (const page of mapsOf(modelOf()).slice(1)) {
      const badges = page.ground.flatMap((one) => (one.type === 'badge' ? [one] : []));
      expect(badges.filter(({ shape }) => shape === 'out').map(({ text }) => text)).toEqual([
        '1 out',
        '2 out',
        '3 out',
      ]);
      // keys of zones stand in brackets: a number in a circle is a place in the order
      expect(badges.filter(({ shape }) => shape === 'round')).toEqual([]);
      const inMap = badges;
      inMap.forEach((a, i) => {
        for (const b of inMap.slice(i + 1)) {
          const meets =
            Math.abs(a.x - b.x) < a.halfW + b.halfW - 0.01 && Math.abs(a.y - b.y) < a.halfH + b.halfH - 0.01;
          expect(meets, `${a.text} on ${b.text}`).toBe(false);
        }
      });
    }
  });
  it('keep numbers of edges, names of zones and the order off the lines of marks', () => {
    let marks = 0;
    for (const bottles of [3, 5, 8])
      for (const page of mapsOf(modelOf({ bigType: true }, coverageOf(1, bottles))).slice(1)) {
        const names = page.ground.flatMap((one) =>
          one.type === 'badge' && (one.shape === 'square' || one.shape === 'disc') ? [one] : [],
        );
        for (const one of page.ground) {
          if (one.type !== 'line' || !['run-out', 'run-level'].includes(one.role)) continue;
          const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = [...one.d.matchAll(/-?[\d.]+/g)].map(([n]) => Number(n));
          marks++;
          for (let share = 0; share <= 1; share += 0.05)
            for (const { x, y, halfW, halfH, text } of names) {
              const [px, py] = [x0 + share * (x1 - x0), y0 + share * (y1 - y0)];
              const isOn = Math.abs(px - x) < halfW && Math.abs(py - y) < halfH;
              expect(isOn, `a mark on ${text}`).toBe(false);
            }
        }
      }
    expect(marks).toBeGreaterThan(40);
  });
  it('tell the order and the key of a zone apart, and how far the hose reaches', () => {
    const own = { ...yard, settings: { ...yard.settings, hose: { ...yard.settings.hose, lengthM: 15 } } };
    const hose = { farthestM: 14, beyondM2: 0, beyond: [], bib: [0, 0] as [number, number] };
    const given = { ...coverage, doses: coverage.doses.map((dose) => ({ ...dose, hose })) };
    const [, page] = mapsOf(
      sheetModel(own, deriveYard(own), visitId, defaultSheetOptions('2027-05-01'), given),
    );
    const textsOf = (drawn: MapPage['ground'] = []) =>
      drawn.flatMap((one) => (one.type === 'text' ? one.text : []));
    const [walk] = coverage.doses[0]?.walks ?? [];
    const key = yard.zones.findIndex(({ id }) => id === walk?.zoneId) + 1;
    expect(textsOf(page?.margin)).toContain(`${yard.zones[key - 1]?.name} (${key})`);
    for (const orientation of ['portrait', 'landscape'] as const) {
      const options = { ...defaultSheetOptions('2027-05-01'), orientation };
      for (const { margin } of mapsOf(sheetModel(own, deriveYard(own), visitId, options, given)).slice(1))
        for (const text of textsOf(margin)) expect(text, 'cut in the margin').not.toContain('…');
    }
    const bibs = yard.marks.filter(({ kind }) => kind === 'hose-bib').length;
    expect(bibs).toBeGreaterThan(0);
    const told = textsOf(page?.ground).filter((text) => text.startsWith('hose '));
    // 15 m are 49.2 ft
    expect(new Set(told.map((text) => text.replaceAll('\u00a0', ' ')))).toEqual(new Set(['hose 49.2 ft']));
    expect(told.length).toBeLessThanOrEqual(bibs);
  });
  it('carry every caution of walk and pace, the ground named, and say what nobody measured', () => {
    const [first, ...others] = coverage.doses;
    if (!first) throw new Error('no dose is walked');
    const issue = (severity: 'warning' | 'note', message: string) => ({
      code: 'c',
      severity,
      message,
      place: {},
    });
    const [walk, ...walks] = first.walks;
    if (!walk) throw new Error('nothing is walked');
    const dose = {
      ...first,
      issues: [issue('note', 'A way goes over a strip.'), issue('warning', 'The hose is too short.')],
      walks: [{ ...walk, issues: [issue('note', 'The passes leave 3 % out.')] }, ...walks],
    };
    const model = modelOf({ doseId: first.doseId }, { ...coverage, doses: [dose, ...others] });
    const texts = blocksOf(model).flatMap((block) =>
      block.type === 'text' ? block.text : block.type === 'list' ? block.items : [],
    );
    const name = yard.zones.find(({ id }) => id === walk.zoneId)?.name ?? '';
    expect(texts).toContain('Take care: The hose is too short.');
    expect(texts).toContain('A way goes over a strip.');
    expect(texts).toContain(`${name}: The passes leave 3 % out.`);
    const bare = { ...yard, equipment: [] };
    const bareDerived = deriveYard(bare);
    const bareModel = sheetModel(
      bare,
      bareDerived,
      visitId,
      { ...defaultSheetOptions('2027-05-01'), doseId: first.doseId },
      coverage,
    );
    const words = JSON.stringify(bareModel.pages);
    expect(words).toContain('usual figures of the trade, not measured');
    // nothing measured: the pace says so too
    expect(words).toMatch(/a usual walk stands in/);
  });
  it('tell what a helper walks by: time of a round area, a usual pass, and the pace of each zone', () => {
    const [first] = coverage.doses;
    const figures = visit.figures.doses[0];
    if (!first || !figures) throw new Error('no dose is walked');
    const speedMPerS = 0.75;
    const spreader = newEquipment('own', 'broadcast-spreader', {
      name: 'Own spreader',
      swathM: SWATH_M,
      overlapShare: 0,
      hasEdgeGuard: true,
      speedMPerS,
    });
    const walkWith = (coats: 1 | 2) => {
      const own = {
        ...yard,
        settings: { ...yard.settings, units: 'metric' as const, stepM: 0.75 },
        equipment: [spreader],
        visits: yard.visits.map((each) => ({
          ...each,
          doses: each.doses.map((dose) => ({
            ...dose,
            passes: { ...dose.passes, equipmentId: 'own', coats, isGuarded: true },
          })),
        })),
      };
      const options = { ...defaultSheetOptions('2027-05-01'), doseId: first.doseId };
      return sheetModel(own, deriveYard(own), visitId, options, coverageOf(coats));
    };
    const blocks = blocksOf(walkWith(1));
    const texts = blocks.flatMap((block) =>
      block.type === 'text' ? block.text.replaceAll('\u00a0', ' ') : [],
    );
    // common practice, no source: 100 m² of 2 m passes are 50 m of walk, at 0.75 m/s 66.7 s
    const walkBy = texts.find((text) => text.startsWith('To walk by'));
    expect(walkBy).toContain('1 min 07 s per 100 m²; 60 steps a minute, each 75 cm; a usual pass of');
    expect(texts.some((text) => /edge guard down along the edges; walk 2.7 km\/h/.test(text))).toBe(true);
    const zones = blocks.find(
      (block) => block.type === 'table' && block.caption.startsWith('Zones in walking order'),
    );
    if (zones?.type !== 'table') throw new Error('no table of zones');
    expect(zones.columns.at(-1)?.head).toBe('Pace');
    expect(zones.columns.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
    for (const row of zones.rows) expect(row).toHaveLength(zones.columns.length);
    // so much faster as the passes are longer than area / spacing, that just the zone's amount goes out
    first.walks.forEach(({ zoneId, workingM }, i) => {
      const areaM2 = figures.zones.find((zone) => zone.zoneId === zoneId)?.areaM2 ?? Number.NaN;
      const kmPerH = (speedMPerS * 3.6 * workingM * SWATH_M) / areaM2;
      expect(zones.rows[i]?.at(-1)).toBe(`${kmPerH.toFixed(1)}\u00a0km/h`);
    });
    const twice = JSON.stringify(walkWith(2).pages).replaceAll('\u00a0', ' ');
    expect(twice).toMatch(
      /Own spreader; swath [^"]*walk [^"]*\. Two coats at half the rate, the second across/,
    );
    expect(twice).toContain('To walk by, each coat:');
  });
  it('stay off a sheet that does not ask for them, or where none are laid out', () => {
    const parts = defaultSheetOptions('2027-05-01').parts.filter((part) => part !== 'passes');
    const plain = JSON.stringify(modelOf({}, null));
    expect(JSON.stringify(modelOf({ parts }))).toBe(plain);
    expect(mapsOf(modelOf({}, null)).length).toBe(1);
    expect(plain).not.toContain('Run-out marks');
    expect(mapsOf(modelOf({}, { ...coverage, visitId: 'another' })).length).toBe(1);
  });
});
