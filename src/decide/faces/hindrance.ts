import type { Face } from '../../flow/stock/defect.ts';

/** Why a face cannot carry what is to be seen. Lengths in ticks. */
export type Hindrance =
  | {
      readonly kind: 'too thin' | 'too short' | 'too narrow';
      readonly has: number;
      readonly needs: number;
    }
  | { readonly kind: 'other species'; readonly has: string; readonly asked: string }
  | { readonly kind: 'no clear stretch'; readonly length: number; readonly width: number }
  | { readonly kind: 'pinned elsewhere'; readonly board: string; readonly face: Face | null }
  /** The parts that would be short; `proven`: no layout at all has fewer short, else none was found. */
  | { readonly kind: 'rest is short'; readonly parts: readonly string[]; readonly proven: boolean }
  | { readonly kind: 'not laid out'; readonly proven: boolean };
