import { deriveYard } from '../../session/derive';
import type { Derived } from '../../session/types';
import { replaceVisit } from '../../yard/edits';
import type { Issue } from '../../yard/types';

/** What speaks against a visit on the day it has: label limits, caps, rules, holds and all that is plainly wrong. */
export function issuesOfVisit(derived: Derived, visitId: string): readonly Issue[] {
  const kept = issuesOf.get(derived) ?? new Map<string, readonly Issue[]>();
  issuesOf.set(derived, kept);
  const found = kept.get(visitId) ?? gatherIssues(derived, visitId);
  kept.set(visitId, found);
  return found;
}

const issuesOf = new WeakMap<Derived, Map<string, readonly Issue[]>>();

function gatherIssues(derived: Derived, visitId: string): readonly Issue[] {
  const own = derived.visit(visitId);
  const planned = [
    ...(own?.figures.issues ?? []),
    ...(own?.figures.doses.flatMap((dose) => dose.issues) ?? []),
  ];
  const season = derived.season().issues.filter((issue) => issue.place.visitId === visitId);
  const issues = [
    ...planned.filter(
      (issue) => issue.severity === 'error' || (issue.code.startsWith('limit-') && issue.severity !== 'note'),
    ),
    ...season.filter((issue) => issue.severity !== 'note'),
  ];
  const seen = new Set<string>();
  return issues.filter((issue) => !seen.has(issue.message) && seen.add(issue.message));
}

/** Faults that name both visits: what one of them shows need not be said of the other. */
const MUTUAL = ['limit-interval'];

/** Tells what would speak against a visit on another day, before it is put there. Keeps what it worked out. */
export class MoveJudge {
  private kept = new Map<string, readonly Issue[]>();
  private of: Derived | null = null;

  /**
   * Everything that would be wrong with the visit on `date`, and what would newly be wrong with others because of it
   * (their message begins with their name). @param derived of the document as it stands
   */
  judge(derived: Derived, visitId: string, date: string): readonly Issue[] {
    if (this.of !== derived) {
      this.of = derived;
      this.kept = new Map();
    }
    const key = `${visitId} ${date}`;
    const found = this.kept.get(key) ?? judgeAnew(derived, visitId, date);
    this.kept.set(key, found);
    return found;
  }
}

function judgeAnew(derived: Derived, visitId: string, date: string): readonly Issue[] {
  const { yard } = derived;
  const visit = yard.visits.find((one) => one.id === visitId);
  if (visit === undefined) return [];
  const trial = deriveYard(replaceVisit(yard, { ...visit, date }), derived);
  const others = yard.visits.flatMap((other) => {
    if (other.id === visitId) return [];
    const before = new Set(issuesOfVisit(derived, other.id).map((issue) => issue.code));
    return issuesOfVisit(trial, other.id)
      .filter((issue) => !before.has(issue.code) && !MUTUAL.includes(issue.code))
      .map((issue) => ({ ...issue, message: `“${other.name}”: ${issue.message}` }));
  });
  return [...issuesOfVisit(trial, visitId), ...others];
}
