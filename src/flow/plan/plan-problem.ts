import type { ProblemBase } from '../../base/result/result.ts';
import type { Tick } from '../../base/units/tick.ts';

/** A size that must be above zero and is not. */
export type SizeName =
  | 'face height'
  | 'thickness'
  | 'height above opening'
  | 'ledger thickness'
  | 'ledger width'
  | 'along wall'
  | 'projection';

/** Why a mantel cannot be planned. */
export type PlanProblem = ProblemBase &
  (
    | { readonly kind: 'no legs' }
    /** `leg` is null for a setting of the mantel. */
    | { readonly kind: 'not above zero'; readonly size: SizeName; readonly leg: string | null }
    | { readonly kind: 'leg named twice'; readonly leg: string }
    | { readonly kind: 'corner out of range'; readonly leg: string; readonly turn: number }
    | { readonly kind: 'side wall out of range'; readonly side: 'left' | 'right'; readonly angle: number }
    /** The facing (and the gap behind the panels) takes up the whole projection. */
    | { readonly kind: 'no depth'; readonly leg: string; readonly least: Tick }
    /** The corners at its ends eat up the whole leg, and this much more. */
    | { readonly kind: 'leg too short'; readonly leg: string; readonly lacking: Tick }
    | { readonly kind: 'no hollow'; readonly faceHeight: Tick; readonly least: Tick }
    | { readonly kind: 'ledger too high'; readonly width: Tick; readonly room: Tick }
    | {
        readonly kind: 'ledger too thick';
        readonly leg: string;
        readonly thickness: Tick;
        readonly room: Tick;
      }
    | { readonly kind: 'legs cross'; readonly leg: string; readonly other: string }
    | { readonly kind: 'piece too long'; readonly piece: string }
  );
