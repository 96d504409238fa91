import {
  type CurveDraft,
  type Draft,
  emptyCurve,
  emptyDraft,
  hasDirection,
  isLineWhole,
  isWhole,
} from './draft';
import type { Label, Token } from './tokens';

/** metres in a bare number, and metres in a foot. */
export interface GatherUnits {
  readonly bareM: number;
  readonly footM: number;
}

/**
 * Gathers tokens into calls: one direction and one length each, or the figures of a curve; in any order.
 * A new call begins at a break, and where a direction or a length comes that the call already has.
 */
export function gatherCalls(tokens: readonly Token[], units: GatherUnits): Draft[] {
  const gatherer = new Gatherer(tokens, units);
  return gatherer.run();
}

class Gatherer {
  private readonly drafts: Draft[] = [];
  private draft = emptyDraft();
  /** what the next figure is, by the word before it. */
  private label: Label | null = null;
  /** a curve told of at the end of the call before: "to the beginning of a curve with a radius of 50 feet". */
  private announced: CurveDraft | null = null;

  constructor(
    private readonly tokens: readonly Token[],
    private readonly units: GatherUnits,
  ) {}

  run(): Draft[] {
    for (const [index, token] of this.tokens.entries()) {
      if (token.type === 'break') this.finish();
      else {
        this.take(token, index);
        this.draft.tokens.push(token);
      }
    }
    this.finish();
    if (this.announced)
      this.drafts.push({ ...emptyDraft(), tokens: this.tokens.slice(-1), curve: this.announced });
    return this.drafts.map((draft) => ({
      ...draft,
      tokens: [...new Set(draft.tokens)].sort((a, b) => a.at - b.at),
    }));
  }

  private take(token: Token, index: number): void {
    const { draft } = this;
    const before = this.tokens[index - 1];
    if (token.type === 'length') this.takeFigure(token, index, token.lengthM, null);
    else if (token.type === 'number')
      this.takeFigure(token, index, token.value * this.units.bareM, token.value);
    else if (token.type === 'angle') this.takeAngle(token, index);
    else if (token.type === 'bearing') this.setDirection(token, token.deg);
    else if (token.type === 'cardinal') this.takeCardinal(token, index);
    else if (token.type === 'turn') this.takeTurn(token);
    else if (token.type === 'label') this.label = this.takeLabel(token);
    else if (token.type === 'fault') this.fault(token, token.fault);
    else if (token.type === 'word') {
      const isUnit = before?.type === 'number' && token.at - before.end <= 1 && !draft.curve;
      if (isUnit) this.fault(token, 'is no unit known here');
      else draft.words.push(token);
    }
  }

  private takeTurn(token: Extract<Token, { type: 'turn' }>): void {
    const { curve } = this.draft;
    if (curve) {
      curve.turn ??= token.turn;
      return;
    }
    if (isLineWhole(this.draft)) this.finish();
    if (this.draft.turn) this.fault(token, 'is a second turn');
    this.draft.turn = { turn: token.turn, deg: null };
  }

  private fault(token: Token, why: string): void {
    this.draft.faults.push({ token, why });
  }

  private finish(): void {
    this.label = null;
    const { draft } = this;
    this.draft = emptyDraft();
    if (draft.curve && draft.isAhead) {
      this.announced = draft.curve;
      return;
    }
    if (draft.tokens.length === 0) return;
    if (this.announced && !draft.curve && (draft.lengthM !== null || draft.directionDeg !== null)) {
      this.drafts.push({ ...emptyDraft(), tokens: draft.tokens.slice(0, 1), curve: this.announced });
      this.announced = null;
    }
    this.drafts.push(draft);
  }

  /** The curve of this call; a straight call before it is ended, what was said of the turn goes over. */
  private curve(): CurveDraft {
    if (this.draft.curve) return this.draft.curve;
    let { turn, isTangent } = this.draft;
    let isAhead = false;
    const isOnlyTangent = isTangent && this.draft.directionDeg === null && !turn;
    if (isLineWhole(this.draft) && !isOnlyTangent) {
      isAhead = this.draft.hasBegin;
      this.finish();
      [turn, isTangent] = [null, false];
    }
    const { draft } = this;
    const curve = this.announced ?? emptyCurve();
    this.announced = null;
    draft.curve = curve;
    draft.isAhead = isAhead;
    if (turn) {
      curve.turn = turn.turn;
      curve.deltaDeg ??= turn.deg;
      draft.turn = null;
    }
    if (isTangent) curve.tangency = 'tangent';
    draft.isTangent = false;
    if (draft.lengthM !== null) {
      curve.arcM = draft.lengthM;
      draft.lengthM = null;
    }
    return curve;
  }

  private setDirection(token: Token, deg: number): void {
    const { draft, label } = this;
    const { curve } = draft;
    if (curve && (label === 'radial' || label === 'center')) {
      curve.radialDeg = deg;
      curve.isToCenter = label === 'center';
      this.label = null;
    } else if (curve && label === 'concave') {
      curve.concaveDeg = deg;
      this.label = null;
    } else if (curve && curve.chordDeg === null && (label === 'chord' || !isWhole(curve))) {
      curve.chordDeg = deg;
      this.label = 'chord';
    } else {
      if (curve || isLineWhole(draft)) this.finish();
      else if (hasDirection(draft)) {
        this.fault(token, 'is a second direction without a length between');
        return;
      }
      this.draft.directionDeg = deg;
      this.label = null;
    }
  }

  private takeCardinal(token: Extract<Token, { type: 'cardinal' }>, index: number): void {
    const isFigure = (each: Token | undefined) => each?.type === 'length' || each?.type === 'number';
    const before = this.tokens[index - 1];
    const [after, next] = this.tokens.slice(index + 1).filter((each) => each.type !== 'filler');
    if (this.label === 'concave' && this.draft.curve) this.setDirection(token, token.deg);
    else if (token.isVague) this.draft.isVague = true;
    else if (after?.type === 'number' && isFigure(next) && !isFigure(before) && token.deg % 180 === 0)
      this.fault({ ...token, end: after.end }, 'lacks its E or W: write N 45 E, then the length');
    else if (this.label === 'due' || isFigure(after) || isFigure(before)) this.setDirection(token, token.deg);
    else if (this.draft.tokens.every((each) => each.type === 'filler')) this.draft.looseDeg = token.deg;
    else this.draft.words.push(token);
  }

  /** @param bare the number as written where it has no unit */
  private takeFigure(token: Token, index: number, lengthM: number, bare: number | null): void {
    const { draft, label } = this;
    const said = this.labelAfter(index);
    if (said === 'radius' && label !== 'radius') {
      this.curve().radiusM ??= lengthM;
      this.label = null;
    } else if (bare !== null && label === 'azimuth' && !draft.curve && !hasDirection(draft)) {
      if (bare > 360) this.fault(token, 'is more than a full turn');
      else this.setDirection(token, bare);
    } else if (bare !== null && this.isTurnOpen() && (draft.lengthM !== null || this.hasLengthAfter(index))) {
      if (draft.turn) draft.turn.deg = bare;
    } else if (draft.curve) {
      if (said === 'arc' && label === null) this.label = 'arc';
      this.takeCurveFigure(token, draft.curve, lengthM, bare);
    } else this.takeLength(token, lengthM, bare);
  }

  private isTurnOpen(): boolean {
    return !this.draft.curve && this.draft.turn?.deg === null;
  }

  private takeLength(token: Token, lengthM: number, bare: number | null): void {
    if (isLineWhole(this.draft)) this.finish();
    const { draft } = this;
    if (draft.lengthM === null) {
      draft.lengthM = lengthM;
      this.label = null;
    } else if (bare !== null && bare <= 360 && !hasDirection(draft)) draft.directionDeg = bare;
    else this.fault(token, 'is a second length without a direction between');
  }

  private takeCurveFigure(token: Token, curve: CurveDraft, lengthM: number, bare: number | null): void {
    const keys = { radius: 'radiusM', chord: 'chordM', tangent: 'tangentM', arc: 'arcM' } as const;
    const { label } = this;
    this.label = null;
    if (label === 'delta' && bare !== null) {
      curve.deltaDeg = bare;
      return;
    }
    const isLabelled = label === 'radius' || label === 'chord' || label === 'tangent' || label === 'arc';
    if (!isLabelled && isWhole(curve)) {
      this.finish();
      this.draft.lengthM = lengthM;
      return;
    }
    const key = isLabelled ? keys[label] : 'arcM';
    if (curve[key] === null) curve[key] = lengthM;
    else if (!isLabelled) this.fault(token, 'is a length whose meaning is not said');
    else if (Math.abs(curve[key] - lengthM) > 1e-9) this.fault(token, `is a second ${label}`);
  }

  private takeAngle(token: Extract<Token, { type: 'angle' }>, index: number): void {
    const { draft, label } = this;
    const { curve } = draft;
    const { deg, feetInstead } = token;
    if (feetInstead && !curve && draft.lengthM === null && !this.hasLengthAfter(index)) {
      this.setDirection(token, feetInstead.deg);
      this.takeLength(token, feetInstead.feet * this.units.footM, null);
    } else if (curve && (label === 'chord' || label === 'radial' || label === 'center'))
      this.setDirection(token, deg);
    else if (curve && label !== 'azimuth' && curve.deltaDeg === null) {
      curve.deltaDeg = deg;
      this.label = null;
    } else if (this.isTurnOpen() && draft.turn) draft.turn.deg = deg;
    else if (deg > 360) this.fault(token, 'is more than a full turn');
    else this.setDirection(token, deg);
  }

  private takeLabel(token: Extract<Token, { type: 'label' }>): Label | null {
    const { draft, label: now } = this;
    switch (token.label) {
      case 'begin':
        draft.hasBegin = true;
        return now;
      case 'azimuth':
        return now === 'chord' || now === 'radial' || now === 'center' ? now : 'azimuth';
      case 'due':
        return 'due';
      case 'non-tangent':
        this.curve().tangency = 'non-tangent';
        return null;
      case 'tangent':
        if (!draft.curve) {
          if (!isLineWhole(draft)) draft.isTangent = true;
          return now;
        }
        if (this.figureFollows(token.end)) return 'tangent';
        draft.curve.tangency ??= 'tangent';
        return now;
      case 'curve':
        this.curve();
        return now;
      case 'radial':
      case 'center':
        // "the center of the road" is no word of a curve
        return draft.curve ? token.label : now;
      default:
        this.curve();
        return token.label;
    }
  }

  /** "50 ft radius", "856.76 feet on the arc": the word after a figure says what it is. */
  private labelAfter(index: number): 'radius' | 'arc' | null {
    for (const [i, next] of this.tokens.slice(index + 1, index + 6).entries()) {
      if (next.type === 'filler') continue;
      if (next.type !== 'label') return null;
      // a label before a figure of its own belongs to that figure
      const hasOwn = this.figureFollows(next.end);
      if (next.label === 'radius' && i === 0 && (!hasOwn || !this.draft.curve)) return 'radius';
      return next.label === 'arc' && !hasOwn ? 'arc' : null;
    }
    return null;
  }

  private figureFollows(at: number): boolean {
    const next = this.tokens.find((each) => each.at >= at && each.type !== 'filler');
    return next?.type === 'length' || next?.type === 'number';
  }

  /** Whether a length or number comes later in the same call. */
  private hasLengthAfter(index: number): boolean {
    const rest = this.tokens.slice(index + 1);
    const next = rest.find((each) => ['break', 'bearing', 'length', 'number'].includes(each.type));
    return next?.type === 'length' || next?.type === 'number';
  }
}
