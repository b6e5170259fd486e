import {
  type FaceFinding,
  type GradeOptions,
  type Outcome,
  allOf,
  anyOf,
  faceFinding,
} from './face-finding.ts';
import { type Limit, faceLimits, isHeld, poorFaceLimits } from './limits.ts';
import { type BoardFace, type MarkedBoard, otherFace } from './marked-board.ts';
import { type Grade, type RuleName, faceRules, leastBoard } from './rule.ts';

/** Whether a board makes one grade, and all that was looked at for it. */
export interface GradeFinding {
  readonly grade: Grade;
  readonly outcome: Outcome;
  /** False when the whole board is too narrow or too short for the grade; nothing else is looked at then. */
  readonly largeEnough: boolean;
  /** Faces in the order in which they were asked for; empty when the board is too small. */
  readonly faces: readonly FaceFinding[];
  readonly limits: readonly Limit[];
}

/** One board under the grader's eye. */
export interface GradeLook {
  readonly board: MarkedBoard;
  readonly surfaceMeasure: number;
  /** Stop at the first thing that fails: findings then leave out what was not looked at. */
  readonly hasty: boolean;
  /** A face under a rule; searched once, however many grades ask for it. */
  readonly face: (face: BoardFace, rule: RuleName) => FaceFinding;
}

/** Starts looking at a board. With the aim `enough` it is looked at hastily. */
export function gradeLook(board: MarkedBoard, surfaceMeasure: number, options: GradeOptions): GradeLook {
  const known = new Map<string, FaceFinding>();
  const face = (side: BoardFace, rule: RuleName): FaceFinding => {
    const key = `${side} ${rule}`;
    const found = known.get(key) ?? faceFinding(board, side, faceRules.get(rule)!, surfaceMeasure, options);
    known.set(key, found);
    return found;
  };
  return { board, surfaceMeasure, hasty: options.aim === 'enough', face };
}

/** Whether the board makes one grade by that grade's own rules. */
export function findingFor(grade: Grade, look: GradeLook): GradeFinding {
  const { board, surfaceMeasure } = look;
  const least = leastBoard.get(grade)!;
  if (board.width < least.width || board.length < least.length) {
    return { grade, outcome: 'not met', largeEnough: false, faces: [], limits: [] };
  }
  switch (grade) {
    case 'F1F':
    case 'Selects':
      return oneFace(grade, look);
    case '3A':
      return threeA(look);
    case 'FAS': {
      const limits = bothFaces.flatMap((face) => faceLimits(board, face, surfaceMeasure));
      return together(grade, look, onBothFaces(grade), limits);
    }
    default:
      return together(grade, look, onBothFaces(grade), []);
  }
}

const bothFaces = ['A', 'B'] as const;

type Asked = readonly (readonly [face: BoardFace, rule: RuleName])[];

function onBothFaces(rule: RuleName): Asked {
  return bothFaces.map((face) => [face, rule] as const);
}

/** All that a grade asks at once: limits held, and each face by its rule. */
function together(grade: Grade, look: GradeLook, asked: Asked, limits: readonly Limit[]): GradeFinding {
  const held = limits.every(isHeld) ? 'met' : 'not met';
  const faces: FaceFinding[] = [];
  for (const [face, rule] of asked) {
    if (look.hasty && (held === 'not met' || faces.at(-1)?.outcome === 'not met')) break;
    faces.push(look.face(face, rule));
  }
  const outcome = allOf([held, ...faces.map((face) => face.outcome)]);
  return { grade, outcome, largeEnough: true, faces, limits };
}

/** F1F or Selects, with either face as the better one. */
function oneFace(grade: 'F1F' | 'Selects', look: GradeLook): GradeFinding {
  const small = grade === 'Selects' && look.surfaceMeasure <= 3;
  const either: GradeFinding[] = [];
  for (const face of bothFaces) {
    const poor = otherFace(face);
    const limits = [
      ...faceLimits(look.board, face, look.surfaceMeasure),
      ...poorFaceLimits(look.board, poor),
    ];
    const asked: Asked = small
      ? [[face, 'small Selects']]
      : [
          [face, 'better face'],
          [poor, '1C'],
        ];
    const finding = together(grade, look, asked, limits);
    if (finding.outcome === 'met') return finding;
    either.push(finding);
  }
  return nearest(either);
}

/** 3A: both faces 3A, or one face 2A (the backs of its cuttings are sound, as of all clear cuttings). */
function threeA(look: GradeLook): GradeFinding {
  const standard = together('3A', look, onBothFaces('3A'), []);
  if (standard.outcome === 'met') return standard;
  const better = bothFaces.map((face) => look.face(face, '2A'));
  const best = better.find((face) => face.outcome === 'met');
  if (best !== undefined) return { ...standard, outcome: 'met', faces: [best] };
  return { ...standard, outcome: anyOf([standard.outcome, ...better.map((face) => face.outcome)]) };
}

/** Of findings that are not met, the one nearer to it: an open one before a failed one, then the more area found. */
function nearest(findings: readonly GradeFinding[]): GradeFinding {
  const found = ({ faces }: GradeFinding): number =>
    faces.reduce((sum, { tried }) => sum + Math.max(0, ...tried.map((way) => way.found)), 0);
  const open = findings.filter(({ outcome }) => outcome === 'not shown');
  const among = open.length > 0 ? open : findings;
  return among.reduce((best, finding) => (found(finding) > found(best) ? finding : best));
}
