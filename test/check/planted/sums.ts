import { type Planted, spoil } from './case.ts';

/** Faults of areas, money and proof. */
export const sumFaults: readonly Planted[] = [
  ...(['board', 'parts', 'offcuts', 'kerf', 'trim', 'scrap'] as const).map((field) =>
    spoil(`area of ${field} one square tick more`, 'wrong area', (draft) => {
      const [board] = draft.boards;
      if (board !== undefined) board.area[field] += 1;
      return board !== undefined;
    }),
  ),
  spoil('square ticks moved from scrap to trim', 'wrong area', (draft) => {
    const board = draft.boards.find(({ area }) => area.scrap > 0);
    if (board === undefined) return false;
    board.area.scrap -= 1;
    board.area.trim += 1;
    return true;
  }),
  spoil('cost a cent less', 'wrong cost', (draft) => {
    const [board] = draft.boards;
    if (board !== undefined) board.cost -= 0.01;
    return board !== undefined;
  }),
  ...(['boards', 'boardFeet', 'boardFeetMeasured', 'cost', 'yield', 'waste', 'setups'] as const).map(
    (field) =>
      spoil(`total of ${field}`, 'wrong total', (draft) => {
        draft.totals[field] += field === 'boards' || field === 'setups' ? 1 : 0.001;
        return true;
      }),
  ),
  spoil('value a cent off', 'wrong proof', (draft) => {
    draft.proof.value -= 0.01;
    return true;
  }),
  spoil('gap a little off', 'wrong proof', (draft) => {
    draft.proof.gap = (draft.proof.gap ?? 0) + 1e-6;
    return true;
  }),
  spoil('bound on the wrong side', 'bound on the wrong side', (draft, job) => {
    draft.proof.bound = draft.proof.value + (job.shop.goal === 'most value' ? -1 : 1);
    return draft.proof.gap !== null;
  }),
  spoil('a bound with parts short', 'wrong proof', (draft) => {
    if (draft.proof.bound !== null) return false;
    draft.proof.bound = 0;
    return true;
  }),
  spoil('no bound with nothing short', 'wrong proof', (draft) => {
    if (draft.proof.bound === null) return false;
    draft.proof.bound = null;
    return true;
  }),
  spoil('proven with a gap', 'not proven', (draft) => {
    draft.proof.proven = true;
    return (draft.proof.gap ?? 0) > 0;
  }),
];
