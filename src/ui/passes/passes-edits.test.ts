import { describe, expect, it } from 'vitest';
import { emptyYard, newDose, newVisit } from '../../yard/defaults';
import type { Yard } from '../../yard/types';
import { changePasses, setHeadings, setWalkEnd } from './passes-edits';

const YARD: Yard = {
  ...emptyYard('yard-1', 'Test yard'),
  visits: [
    newVisit('visit-1', { doses: [newDose('dose-1', 'product-1'), newDose('dose-2', 'product-1')] }),
    newVisit('visit-2', { doses: [newDose('dose-3', 'product-1')] }),
  ],
};
const passesOf = (yard: Yard, doseId: string) =>
  yard.visits.flatMap((visit) => visit.doses).find((dose) => dose.id === doseId)?.passes;

describe('choices of a walk', () => {
  it('changes one dose and leaves the others the same objects', () => {
    const yard = changePasses(YARD, 'visit-1', 'dose-2', { coats: 2, headerLaps: 0 });
    expect(passesOf(yard, 'dose-2')).toMatchObject({ coats: 2, headerLaps: 0, isGuarded: false });
    expect(yard.visits[0]?.doses[0]).toBe(YARD.visits[0]?.doses[0]);
    expect(yard.visits[1]).toBe(YARD.visits[1]);
  });

  it('is no edit without such a visit or dose', () => {
    expect(changePasses(YARD, 'visit-1', 'dose-3', { coats: 2 })).toBe(YARD);
    expect(changePasses(YARD, 'visit-9', 'dose-1', { coats: 2 })).toBe(YARD);
    expect(setHeadings(YARD, 'visit-1', 'dose-9', ['a'], 10)).toBe(YARD);
    expect(setWalkEnd(YARD, 'visit-9', 'startMarkId', 'gate')).toBe(YARD);
  });

  it('keeps headings as those of a line walked both ways, zone by zone', () => {
    const set = setHeadings(YARD, 'visit-1', 'dose-1', ['a', 'b'], 350);
    expect(passesOf(set, 'dose-1')?.headings).toEqual({ a: 170, b: 170 });
    const cleared = setHeadings(set, 'visit-1', 'dose-1', ['a'], null);
    expect(passesOf(cleared, 'dose-1')?.headings).toEqual({ b: 170 });
    expect(passesOf(set, 'dose-2')?.headings).toEqual({});
  });

  it('begins and ends at a mark of the visit', () => {
    const yard = setWalkEnd(YARD, 'visit-1', 'endMarkId', 'gate');
    expect(yard.visits[0]).toMatchObject({ startMarkId: null, endMarkId: 'gate' });
  });
});
