import { describe, expect, it } from 'vitest';
import { measureYard } from '../../src/measure/measureYard';
import { adjustByCompassRule } from '../../src/survey/plat/adjust';
import { exitBearing, formatBearing, formatDms } from '../../src/survey/plat/bearing';
import { curveElements, solveCurve } from '../../src/survey/plat/curve';
import { placeTraverse } from '../../src/survey/plat/placeTraverse';
import { readCalls } from '../../src/survey/plat/readCalls';
import { callVector, computeTraverse } from '../../src/survey/plat/traverse';
import type { PlatCall } from '../../src/survey/plat/types';
import { segmentArea } from '../../src/survey/segmentArea';
import { M_PER_FT, M2_PER_SQFT } from '../../src/units/factors';
import { emptyYard, newZone } from '../../src/yard/defaults';

/*
 * Traverses and circular curves of textbooks and course notes. Expected figures are those printed there,
 * to the last digit printed; where a print has a slip the row says so.
 *
 * [M-D], [M-E], [M-G], [M-I]: J. Mahun, Open Access Surveying Library, Traverse Computations ch. D to I.
 * [M-S2]: the same, self-study "Traverse Adjustment", problem 2, solution.
 * [M-L17]: the same, COGO self-study "Intersections and Curves", problem 2 (Lot 17), solution.
 * [M-C]: the same, "Horizontal Curves" set 2, problem 1.
 * [PU]: Purdue University, course notes ASM 215, traverse calculations.
 * [CR]: "Compass Rule: Adjustment of Bearing and Distance of a Closed Traverse", teaching notes.
 * [ST]: "Sample Traverse Computations", course work (six lines, distances, DMD area).
 * [GW]: a closed-polygon exercise of an elementary surveying textbook, with its answers (justaaa 19749).
 * [GH]: Ghilani, Adjustment Computations, example 8.1.
 * [MC]: Math Central, University of Regina, QQ.09.08 chris6. [FS]: a problem of the Fundamentals of Surveying practice exam, solved by W. Crawford, POB.
 * [MS]: "MSTE 34 Surveying: Horizontal Curves 1", solutions. [RW]: solution 18305718, curves of 8 degrees.
 * [OR], [TX]: curve records quoted by surveyors from plats in Oregon and from a deed (RPLS forum).
 */
const OPTIONS = { foot: 'international', bareUnit: 'ft' } as const;
const ftOf = (m: number) => m / M_PER_FT;

function read(text: string): readonly PlatCall[] {
  const { calls, issues } = readCalls(text, OPTIONS);
  expect(issues).toEqual([]);
  return calls;
}

/** [latitude, departure] of each call, ft */
const latsDeps = (calls: readonly PlatCall[]) => calls.map((call) => callVector(call).map(ftOf).reverse());

function expectRows(
  rows: readonly (readonly number[])[],
  printed: readonly (readonly number[])[],
  within: number,
) {
  expect(rows.length).toBe(printed.length);
  rows.forEach((row, i) => {
    row.forEach((value, j) => {
      expect(Math.abs(value - (printed[i]?.[j] ?? Number.NaN)), `row ${i + 1}`).toBeLessThanOrEqual(within);
    });
  });
}

function expectNear(value: number, printed: number, within: number) {
  expect(Math.abs(value - printed)).toBeLessThanOrEqual(within);
}

const MAHUN_BEARINGS = `S 68°05'35"W 472.68
N 19°46'00"W 216.13
N 45°55'20"E 276.52
S 54°59'15"E 382.24`;

describe('latitudes, departures, closure and precision', () => {
  it('[M-D] bearing traverse', () => {
    const calls = read(MAHUN_BEARINGS);
    expectRows(
      latsDeps(calls),
      [
        [-176.357, -438.548],
        [203.395, -73.093],
        [192.357, 198.651],
        [-219.312, 313.065],
      ],
      0.0006,
    );
    const { closure } = computeTraverse(calls);
    expect(ftOf(closure.lengthM)).toBeCloseTo(1347.57, 6);
    // sums of four figures rounded to 0.001
    expectNear(ftOf(closure.latitudeM), 0.083, 0.0021);
    expectNear(ftOf(closure.departureM), 0.075, 0.0021);
  });

  it('[M-S2] azimuth traverse: closure 0.157 ft, precision 1:15,200', () => {
    const calls = read(`Az 226°54'23" 639.15
Az 00°00'00" 523.69
Az 235°02'29" 409.54
Az 79°35'02" 815.93`);
    expectRows(
      latsDeps(calls),
      [
        [-436.662, -466.732],
        [523.69, 0],
        [-234.66, -335.645],
        [147.517, 802.484],
      ],
      0.0006,
    );
    const { closure } = computeTraverse(calls);
    expect(Math.abs(ftOf(closure.gapM) - 0.157)).toBeLessThan(0.0011);
    // the print divides 2388.31 by the rounded 0.157 and rounds to the nearest hundred
    expect(Math.abs(closure.ratio / 15200 - 1)).toBeLessThan(0.007);
  });

  it('[PU] five courses: closure 0.89 ft in 2,466.05 ft, precision 1:2,771', () => {
    const calls = read(`N 26° 10'E 285.10
S 75° 25'E 610.45
S 15° 30'W 720.48
N 1° 42'W 203.00
N 53° 06'W 647.02`);
    const { closure } = computeTraverse(calls);
    expect(ftOf(closure.lengthM)).toBeCloseTo(2466.05, 6);
    expectNear(ftOf(closure.latitudeM), -0.71, 0.007);
    expectNear(ftOf(closure.departureM), 0.53, 0.007);
    // from sums of latitudes and departures rounded to 0.01
    expect(Math.abs(ftOf(closure.gapM) - 0.89)).toBeLessThan(0.0075);
    // the print divides by the rounded 0.89
    expect(Math.abs(closure.ratio / 2771 - 1)).toBeLessThan(0.009);
  });

  it('[GW] unbalanced departures and latitudes, misclosure 0.045 ft, 1:22,500', () => {
    const calls = read(`N 22° 36' 40" W 314.02
S 60° 39' 24" W 264.49
S 38° 46' 10" E 213.50
N 88° 22' 58" E 217.69`);
    expectRows(
      latsDeps(calls),
      [
        [289.883, -120.733],
        [-129.611, -230.556],
        [-166.46, 133.691],
        [6.144, 217.603],
      ],
      0.0012,
    );
    const { closure } = computeTraverse(calls);
    expectNear(ftOf(closure.gapM), 0.045, 0.0007);
    expect(Math.abs(closure.ratio / 22500 - 1)).toBeLessThan(0.02);
  });

  it('[GH] a course of 456.87 ft at azimuth 23°35′26″ has latitude 418.69 and departure 182.84', () => {
    // the two results are from memory of the book; course and azimuth were read
    const [call] = read(`Az 23°35'26" 456.87`);
    const [dep = 0, lat = 0] = call ? callVector(call).map(ftOf) : [0, 0];
    expectNear(lat, 418.69, 0.007);
    expectNear(dep, 182.84, 0.007);
  });
});

describe('compass rule', () => {
  it('[M-E] adjusted latitudes, departures, lengths and bearings; [M-G] area', () => {
    const adjusted = adjustByCompassRule(read(MAHUN_BEARINGS));
    expectRows(
      latsDeps(adjusted),
      [
        [-176.386, -438.574],
        [203.382, -73.105],
        [192.34, 198.635],
        [-219.336, 313.044],
      ],
      0.0008,
    );
    // the third length is printed 276.479: its digits are exchanged, 192.340 and 198.635 make 276.497
    expect(Math.hypot(192.34, 198.635)).toBeCloseTo(276.497, 3);
    const lengths = [472.715, 216.122, 276.497, 382.237];
    // printed in tenths of a second, from departures rounded to 0.001 ft
    const bearings = [
      248 + 5 / 60 + 27.4 / 3600,
      360 - 19 - 46 / 60 - 14.9 / 3600,
      45 + 55 / 60 + 20.7 / 3600,
      180 - 54 - 58 / 60 - 58 / 3600,
    ];
    adjusted.forEach((call, i) => {
      if (call.kind !== 'line') throw new Error('a line');
      expect(Math.abs(ftOf(call.lengthM) - (lengths[i] ?? 0))).toBeLessThan(0.0012);
      expect(Math.abs(call.bearingDeg - (bearings[i] ?? 0)) * 3600).toBeLessThan(0.8);
    });
    // twice the area by double meridian distances, printed 205,871.5
    expect(Math.abs(2 * (computeTraverse(adjusted).areaM2 / M2_PER_SQFT) - 205_871.5)).toBeLessThan(1.5);
    expect(computeTraverse(adjusted).closure.gapM).toBeLessThan(1e-9);
  });

  it('[M-S2] adjusted latitudes, departures, azimuths and lengths', () => {
    const adjusted = adjustByCompassRule(
      read(`Az 226°54'23" 639.15\nAz 00°00'00" 523.69\nAz 235°02'29" 409.54\nAz 79°35'02" 815.93`),
    );
    expectRows(
      latsDeps(adjusted),
      [
        [-436.631, -466.761],
        [523.715, -0.023],
        [-234.64, -335.663],
        [147.556, 802.447],
      ],
      0.0012,
    );
    const azimuths = [
      226 + 54 / 60 + 36.6 / 3600,
      359 + 59 / 60 + 50.8 / 3600,
      235 + 2 / 60 + 42.5 / 3600,
      79 + 34 / 60 + 50.5 / 3600,
    ];
    const lengths = [639.15, 523.715, 409.544, 815.901];
    adjusted.forEach((call, i) => {
      if (call.kind !== 'line') throw new Error('a line');
      expect(Math.abs(ftOf(call.lengthM) - (lengths[i] ?? 0))).toBeLessThan(0.0015);
      expect(Math.abs(call.bearingDeg - (azimuths[i] ?? 0)) * 3600).toBeLessThan(0.8);
    });
  });

  it('[PU] balanced latitudes and departures', () => {
    const adjusted = adjustByCompassRule(
      read(`N 26° 10'E 285.10\nS 75° 25'E 610.45\nS 15° 30'W 720.48\nN 1° 42'W 203.00\nN 53° 06'W 647.02`),
    );
    expectRows(
      latsDeps(adjusted),
      [
        [255.96, 125.66],
        [-153.52, 590.65],
        [-694.07, -192.69],
        [202.97, -6.07],
        [388.66, -517.55],
      ],
      0.011,
    );
  });

  it('[CR] four courses in metres', () => {
    const calls = read(`N 76° 00' E 80.40 m\nS 36° 00' E 46.30 m\nS 61° 00' W 72.80 m\nN 38° 00' W 68.00 m`);
    const { closure } = computeTraverse(calls);
    // the print adds up four figures rounded to a millimetre
    expect(Math.abs(closure.latitudeM - 0.285)).toBeLessThan(0.002);
    expect(Math.abs(closure.departureM + 0.311)).toBeLessThan(0.002);
    const lats = adjustByCompassRule(calls).map((call) => callVector(call)[1]);
    const printed = [19.3653, -37.5063, -35.3716, 53.5126];
    lats.forEach((lat, i) => {
      expect(Math.abs(lat - (printed[i] ?? 0))).toBeLessThan(0.0012);
    });
  });

  it('[ST] six courses that close badly (24.69 ft, 1:200), adjusted, their area 1,715,250 sq ft', () => {
    const calls = read(`N 5 30 E 495.85
N 46 02 E 850.62
S 67 38 E 855.45
S 12 25 E 1020.87
S 83 44 W 1117.26
N 55 09 W 660.08`);
    const { closure } = computeTraverse(calls);
    expect(ftOf(closure.latitudeM)).toBeCloseTo(16.8171, 3);
    expect(ftOf(closure.departureM)).toBeCloseTo(18.0737, 3);
    expect(ftOf(closure.gapM)).toBeCloseTo(24.6876, 3);
    expect(Math.round(closure.ratio / 100) * 100).toBe(200);
    const adjusted = adjustByCompassRule(calls);
    expectRows(
      latsDeps(adjusted),
      [
        [491.8995, 45.7328],
        [587.6733, 609.1538],
        [-328.4036, 788.0003],
        [-1000.4252, 215.8168],
        [-125.7134, -1114.6225],
        [374.9694, -544.0812],
      ],
      0.0002,
    );
    expect(computeTraverse(adjusted).areaM2 / M2_PER_SQFT).toBeCloseTo(1_715_250.05, 0);
  });
});

describe('circular curves', () => {
  it('[M-C] R 800, delta 45°49′45″: T 338.17, chord 622.97; chords of arcs from the beginning', () => {
    // the print has L = 693.90 for 639.90: the stations 50+84.98 and 57+24.88 and its table show it
    const whole = curveElements(800, 45 + 49 / 60 + 45 / 3600);
    expectNear(whole.arcM, 639.9, 0.007);
    expectNear(whole.tangentM, 338.17, 0.007);
    expectNear(whole.chordM, 622.97, 0.007);
    // 57+00 is printed as 615.20 for 615.02, which its deflection 22°01′26″ shows
    for (const [arc, deflection, chord] of [
      [15.02, [0, 32, 17], 15.02],
      [115.02, [4, 7, 8], 114.92],
      [215.02, [7, 42, 0], 214.38],
      [315.02, [11, 16, 51], 312.99],
      [415.02, [14, 51, 43], 410.38],
      [515.02, [18, 26, 34], 506.18],
      [615.02, [22, 1, 26], 599.99],
    ] as const) {
      const solved = solveCurve({ radiusM: 800, deltaDeg: null, arcM: arc, chordM: null, tangentM: null });
      if (!solved.ok) throw new Error(solved.message);
      const [d, m, s] = deflection;
      expect(Math.abs(solved.deltaDeg / 2 - (d + m / 60 + s / 3600)) * 3600).toBeLessThan(1.1);
      expect(Math.abs(curveElements(800, solved.deltaDeg).chordM - chord)).toBeLessThan(0.0105);
    }
  });

  it('[MS] R 249.17 m, I 29°20′: T 65.2136, chord 126.1773, middle ordinate 8.119', () => {
    const curve = curveElements(249.17, 29 + 20 / 60);
    expectNear(curve.tangentM, 65.2136, 0.00007);
    expectNear(curve.chordM, 126.1773, 0.00007);
    expectNear(curve.middleOrdinateM, 8.119, 0.0007);
  });

  it('[RW] R 716.20 ft: 25°30′ T 162.06, L 318.75; 103°30′ T 908.50, L 1293.75', () => {
    for (const [delta, tangent, arc] of [
      [25.5, 162.06, 318.75],
      [103.5, 908.5, 1293.75],
    ] as const) {
      const curve = curveElements(716.2, delta);
      expect(Math.abs(curve.tangentM - tangent)).toBeLessThan(0.011);
      // the print takes 100·Δ/D; 716.20 is a rounded radius
      expect(Math.abs(curve.arcM - arc)).toBeLessThan(0.011);
    }
  });

  it('a field manual’s curve of 15 degrees, delta 75°: R 381.97, T 293.09, L 500.0, LC 465.06, E 99.49, M 78.93 (from memory)', () => {
    const curve = curveElements(5729.58 / 15, 75);
    const printed = [381.97, 293.09, 500, 465.06, 99.49, 78.93];
    [curve.radiusM, curve.tangentM, curve.arcM, curve.chordM, curve.externalM, curve.middleOrdinateM].forEach(
      (value, i) => {
        expect(Math.abs(value - (printed[i] ?? 0))).toBeLessThan(0.011);
      },
    );
  });

  it('[OR] a curve record is read whole, all five figures agree, and its end tangent is the plat’s', () => {
    // sets out S 89°52′59″ E: the chord and the tangent N 24°02′45″ W that follows show it
    const text = `thence S89°52'59"E, 100.00 feet to the point of curve of a 429.99 foot radius curve to the left; thence 856.76 feet on the arc of said curve through a central angle of 114°09'46" (the chord of said curve bears N33°02'08"E, 721.90 feet) to a point of tangency`;
    const [, arc] = read(text);
    if (arc?.kind !== 'arc') throw new Error('an arc');
    const elements = curveElements(ftOf(arc.radiusM), arc.deltaDeg);
    expectNear(elements.arcM, 856.76, 0.007);
    expectNear(elements.chordM, 721.9, 0.007);
    expect(formatBearing(exitBearing(arc))).toBe('N 24°02′45″ W');
  });

  it('[TX] radius and arc length give the central angle and the next tangent', () => {
    const calls = read(
      `Thence North 56°13'49" East, 80.00 feet to the beginning of a 160.00 foot radius curve to the right; Thence along said curve an arclength of 92.97 feet`,
    );
    const arc = calls[1];
    if (arc?.kind !== 'arc') throw new Error('an arc');
    // printed: 33°17′28″; an arc in hundredths of a foot at 160 ft gives it within 6.5 seconds
    expect(Math.abs(arc.deltaDeg - (33 + 17 / 60 + 28 / 3600)) * 3600).toBeLessThan(6.5);
    expect(formatDms(arc.deltaDeg)).toBe('33°17′33″');
  });
});

describe('outlines with curves', () => {
  it('[FS] a lot of 60 by 120 ft with one corner of 20 ft radius has 7,114 sq ft', () => {
    const calls = read('N 100\ncurve right R=20 delta 90°\ntangent 40\nS 120\nW 60');
    const { areaM2, closure, isClockwise } = computeTraverse(calls);
    expect(areaM2 / M2_PER_SQFT).toBeCloseTo(7114, 0);
    expect(closure.gapM).toBeLessThan(1e-9);
    expect(isClockwise).toBe(true);
  });

  it('[M-L17] Lot 17: points D and F on a chain of four tangent curves', () => {
    // the solution's point H and area are left out: its H does not lie on its own line from A (0.35 ft off)
    const calls = read(`Az 102°32'50" 137.00
curve left R=200 delta 38°30'00"
curve right R=300 delta 30°00'00"
curve right R=30 delta 75°00'00"
curve right R=400 delta 15°00'00"`);
    const { points } = computeTraverse(calls);
    const near = (index: number, printed: readonly [number, number]) => {
      const [x = 0, y = 0] = points[index]?.map(ftOf) ?? [];
      expect(Math.abs(1000 + y - printed[0])).toBeLessThan(0.011);
      expect(Math.abs(500 + x - printed[1])).toBeLessThan(0.011);
    };
    near(2, [985.63, 764.7]);
    near(4, [990.91, 944.5]);
    const last = calls.at(-1);
    // the radius to G runs at azimuth 94°02′50″: the tangent there at right angles to it
    expect(last && exitBearing(last)).toBeCloseTo(184 + 2 / 60 + 50 / 3600, 9);
  });

  it('[MC] the segment over a chord of 38.94 ft in a circle of 50 ft radius has 103.29 sq ft', () => {
    const solved = solveCurve({ radiusM: 50, deltaDeg: null, arcM: null, chordM: 38.94, tangentM: null });
    if (!solved.ok) throw new Error(solved.message);
    expect(Math.abs(segmentArea(50, (solved.deltaDeg * Math.PI) / 180) - 103.29)).toBeLessThan(0.08);
  });

  it('laid on the ground, the arcs are editable and the zone measures what the calls enclose', () => {
    const calls = read('N 10 E 100\ncurve right R=20 delta 90°\ntangent 40\nS 10 W 120\nN 80 W 60');
    const laid = placeTraverse(calls, [-96.5432, 41.2345], 12.5);
    expect(laid.curves.length).toBe(1);
    const zone = newZone('lot', 'turf', laid.parts, { curves: laid.curves });
    const net = measureYard({ ...emptyYard('y', 'Y'), zones: [zone] }).zones.get('lot')?.netM2 ?? 0;
    // [FS] 7,200 - (20² - π·20²/4)
    expect(Math.abs(net / M2_PER_SQFT - (7200 - 400 + 100 * Math.PI))).toBeLessThan(0.02);
  });

  it('a half circle’s segment is half its area, a full one’s the whole (school geometry)', () => {
    expect(segmentArea(10, Math.PI)).toBeCloseTo(50 * Math.PI, 9);
    expect(segmentArea(10, 2 * Math.PI)).toBeCloseTo(100 * Math.PI, 9);
  });
});
