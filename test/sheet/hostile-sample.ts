import { millimetres } from '../../src/base/units/tick.ts';
import type { Rectangle } from '../../src/base/geometry/rectangle.ts';
import type { Layout } from '../../src/flow/cuts/layout.ts';
import { defaultShop } from '../../src/flow/shop/shop.ts';
import type { Job } from '../../src/flow/stock/job.ts';
import { layoutOf, Saw } from './saw.ts';
import { boardOf, partOf } from './stock-of.ts';

const mm = millimetres;

/** Names that a user, or a joker, may write. */
export const hostileNames = [
  '<script>document.title="owned"</script>',
  '"><img src=x onerror=alert(1)>',
  "</style></svg>]]>'",
  '__proto__',
  '=1+1',
  'x'.repeat(10_000),
  'word '.repeat(2_000),
  'מדף עליון 12',
  '‮evil‬ name ⁦x',
  '👩‍🔧🪚 plank 🪵🪵🪵',
  '木製の棚板と長い名前',
  'bell\u0007 null\u0000 esc\u001B[31m \uD83D lone',
  '',
  '../../x & y',
] as const;

/** A job in millimetres whose every name is hostile: one board of wide pieces, one of tiny ones. */
export const hostileJob: Job = {
  name: '</title><script>alert(1)</script>',
  shop: { ...defaultShop, units: 'mm', lengthAllowance: mm(10), offcutCredit: 0.5 },
  parts: hostileNames.map((name) =>
    partOf(name, 2, mm(400), mm(60), { note: `note ${name}`, run: name === '' ? null : name }),
  ),
  boards: [
    boardOf(hostileNames[0], mm(3000), mm(160), {
      note: hostileNames[5],
      species: hostileNames[1],
      grade: hostileNames[8],
    }),
    boardOf(hostileNames[5], mm(2400), mm(140), { nominalThickness: hostileNames[2], tone: '<b>' }),
    boardOf(hostileNames[7], mm(900), mm(300), { surface: 'S4S', origin: 'rack', quantity: 3 }),
  ],
};

/** Its layout. */
export function hostileLayout(): Layout {
  const { shop } = hostileJob;
  const saws = hostileJob.boards.map((board, index) => new Saw(board, shop, index + 1));
  const [wide, tiny, rack] = saws;
  if (!wide || !tiny || !rack) throw new Error('the sample has three boards');
  let copies = 0;
  const strips = (saw: Saw, work: Rectangle, width: number, length: number, count: number): void => {
    const { part, rest } = saw.rip(work, width);
    let left = part;
    for (let index = 0; index < count && left.length > length; index += 1) {
      const cut = saw.crosscut(left, length, 'piece');
      saw.piece(
        cut.part,
        hostileNames[copies % hostileNames.length] ?? '',
        1 + Math.floor(copies / hostileNames.length),
        copies % 3 === 0 ? 'B' : 'A',
      );
      copies += 1;
      left = cut.rest;
    }
    if (rest.width > width + shop.ripKerf) strips(saw, rest, width, length, count);
    else saw.keep(rest, hostileNames[copies % hostileNames.length] ?? '');
  };
  strips(wide, wide.trimmed(), mm(60), mm(410), 6);
  strips(tiny, tiny.trimmed(), mm(22), mm(45), 9);
  strips(rack, rack.trimmed(), mm(60), mm(190), 4);
  const boards = saws.map((saw) => saw.done());
  return layoutOf(hostileJob, boards, { proven: true }, [
    { part: hostileNames[5], copies: 1, why: `<b>${hostileNames[6]}</b>` },
    { part: hostileNames[8], copies: 2, why: hostileNames[11] },
  ]);
}
