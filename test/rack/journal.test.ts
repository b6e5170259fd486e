import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bookingText, type BookingDraft } from '../../src/flow/rack/booking-draft.ts';
import { splitLine } from '../../src/flow/rack/dialect.ts';
import { emptyJournal, readJournal, type Journal } from '../../src/flow/rack/read-journal.ts';
import { anyDrafts, plainEntry } from './arbitraries.ts';

function read(text: string): Journal {
  const journal = readJournal(text);
  if (!journal.ok) throw new Error('no journal');
  return journal.value;
}

/** The text of a journal with these bookings, as it grows append by append. */
function written(drafts: readonly BookingDraft[], unit: 'in' | 'mm' = 'in'): string {
  let text = '';
  for (const draft of drafts) text += bookingText(read(text), draft, unit).text;
  return text;
}

const wanted = (drafts: readonly BookingDraft[]): unknown[] =>
  drafts.flatMap(({ occasion, deeds }) => deeds.map(({ deed, note }) => ({ occasion, deed, note })));

const two: readonly BookingDraft[] = [
  bookingOf('job one', 'C1', 'C2', 'C3'),
  bookingOf('job two', 'D1', 'D2', 'D3'),
];

function bookingOf(job: string, ...names: string[]): BookingDraft {
  return {
    occasion: { time: 'T', job, layout: '' },
    deeds: names.map((name) => ({
      deed: { action: 'discard', name, piece: null },
      note: 'a "quoted", note; here',
    })),
  };
}

describe('a journal', () => {
  it('reads back what was written, exactly, in either unit', () => {
    fc.assert(
      fc.property(anyDrafts, fc.constantFrom('in', 'mm'), (drafts, unit) => {
        const journal = read(written(drafts, unit as 'in' | 'mm'));
        expect(journal.notices).toEqual([]);
        expect(journal.entries.map(plainEntry)).toEqual(wanted(drafts));
        expect(journal.lastBooking).toBe(drafts.length);
        expect(journal.entries.map(({ number }) => number)).toEqual(
          journal.entries.map((_, index) => index + 1),
        );
      }),
      { numRuns: 100 },
    );
  });

  it('is one physical line a record, whatever the names hold', () => {
    fc.assert(
      fc.property(anyDrafts, (drafts) => {
        const lines = written(drafts).split('\n');
        expect(lines).toHaveLength(wanted(drafts).length + 2);
      }),
    );
  });

  it('holds no cell that a spreadsheet would run', () => {
    fc.assert(
      fc.property(anyDrafts, (drafts) => {
        const rows: string[][] = parse(written(drafts));
        expect(rows.flat().filter((cell) => /^[=+@\t\r-]/.test(cell))).toEqual([]);
      }),
    );
  });

  it('is taken apart as the CSV package would take it', () => {
    fc.assert(
      fc.property(anyDrafts, (drafts) => {
        const text = written(drafts);
        const rows: string[][] = parse(text, { relax_column_count: true });
        expect(
          text
            .trimEnd()
            .split('\n')
            .map((line) => splitLine(line, ',')),
        ).toEqual(rows);
      }),
    );
  });

  it('is empty when there is no text', () => {
    expect(read('')).toEqual(emptyJournal);
    expect(read('\uFEFF\n')).toEqual(emptyJournal);
  });

  it('is refused, not guessed at, without its header', () => {
    const journal = readJournal('name,size\nC1,20\n');
    expect(journal).toEqual({
      ok: false,
      problems: [{ kind: 'no journal', missing: ['action', 'piece', 'length', 'width'] }],
    });
  });
});

describe('a torn journal', () => {
  it('holds each booking whole or not at all, cut at any byte', () => {
    fc.assert(
      fc.property(anyDrafts, fc.nat(), (drafts, where) => {
        const text = written(drafts);
        const cut = where % (text.length + 1);
        const journal = read(text.slice(0, cut));
        const entries = journal.entries.map(plainEntry);
        const whole = drafts.findLastIndex(
          (_, index) => entries.length >= wanted(drafts.slice(0, index + 1)).length,
        );
        expect(entries).toEqual(wanted(drafts.slice(0, whole + 1)));
        // Each booking whose every line is there but for the line end counts.
        const there = drafts.filter((_, index) => cut >= written(drafts.slice(0, index + 1)).length - 1);
        expect(whole + 1).toBe(there.length);
      }),
      { numRuns: 100 },
    );
  });

  it('goes on after its torn tail is taken off: the next booking follows the last whole one', () => {
    const text = written(two);
    for (let cut = 0; cut <= text.length; cut += 1) {
      const torn = text.slice(0, cut);
      const journal = read(torn);
      const lines = torn.split('\n');
      const kept =
        journal.keepLines < lines.length
          ? lines
              .slice(0, journal.keepLines)
              .map((line) => `${line}\n`)
              .join('')
          : torn;
      const next = kept + bookingText(journal, bookingOf('next', 'E1'), 'in').text;
      const again = read(next);
      expect(again.notices).toEqual([]);
      expect(again.entries.slice(0, -1)).toEqual(journal.entries);
      expect(again.entries.at(-1)).toMatchObject({
        occasion: { job: 'next' },
        booking: journal.lastBooking + 1,
      });
    }
  });

  it('says where and what was torn', () => {
    const text = written(two);
    const lines = text.split('\n');
    const cut = [...lines.slice(0, 5), (lines[5] ?? '').slice(0, 20)].join('\n');
    expect(read(cut).notices).toEqual([
      { kind: 'torn tail', line: 5, lines: 2, text: [lines[4], (lines[5] ?? '').slice(0, 20)].join('\n') },
    ]);
    expect(read(cut).entries).toHaveLength(3);
  });

  it('after a power cut may end in zeros: they are torn off, too', () => {
    const text = written(two);
    const journal = read(`${text}\0\0\0\0\0\0`);
    expect(journal.entries).toHaveLength(6);
    expect(journal.notices).toMatchObject([{ kind: 'torn tail', line: 8 }]);
  });
});

describe('a journal that a spreadsheet saved again', () => {
  const text = written(two);
  const names = (journal: Journal): string[] =>
    journal.entries.map(({ deed }) => (deed.action === 'discard' ? deed.name : '?'));
  const all = ['C1', 'C2', 'C3', 'D1', 'D2', 'D3'];

  /** Re-saved by another program: own delimiter, line ends and quoting. */
  function resaved(delimiter: string, lineEnd: string, quoteAll: boolean): string {
    const rows = text
      .split('\n')
      .slice(0, -1)
      .map((line) => {
        const cells = (line.match(/"(?:[^"]|"")*"|[^,]+|(?<=,)(?=,|$)|^(?=,)/g) ?? []).map((cell) =>
          cell.startsWith('"') ? cell.slice(1, -1).replace(/""/g, '"') : cell,
        );
        const quote = (cell: string): string => `"${cell.replace(/"/g, '""')}"`;
        return cells
          .map((cell) => (quoteAll || cell.includes(delimiter) || cell.includes('"') ? quote(cell) : cell))
          .join(delimiter);
      });
    return `\uFEFF${rows.join(lineEnd)}${lineEnd}`;
  }

  it.each([
    [';', '\r\n', false],
    [';', '\n', true],
    ['\t', '\r', false],
    [',', '\r\n', true],
  ])('with %j, %j, all quoted %s: loads, and goes on in that dialect', (delimiter, lineEnd, quoteAll) => {
    const again = resaved(delimiter, lineEnd, quoteAll);
    const journal = read(again);
    expect(journal.notices).toEqual([]);
    expect(names(journal)).toEqual(all);
    expect(journal.entries.map(plainEntry)).toEqual(wanted(two));
    const longer = again + bookingText(journal, bookingOf('x', 'E1'), 'in').text;
    expect(longer.endsWith(lineEnd)).toBe(true);
    expect(names(read(longer))).toEqual([...all, 'E1']);
  });

  it('with its rows sorted: the entry numbers tell the order', () => {
    const [header = '', ...rows] = text.trimEnd().split('\n');
    const journal = read([header, ...rows.reverse()].join('\n'));
    expect(names(journal)).toEqual(all);
    expect(journal.notices).toEqual([]);
  });

  it('with columns moved and one added', () => {
    const rows = text
      .trimEnd()
      .split('\n')
      .map((line, index) => `${index === 0 ? 'shelf' : 'left'},${line}`);
    const journal = read(`${rows.join('\n')}\n`);
    expect(names(journal)).toEqual(all);
    expect(journal.notices).toEqual([{ kind: 'unknown column', name: 'shelf' }]);
    const line = bookingText(journal, bookingOf('x', 'E1'), 'in').text;
    expect(line.startsWith(',7,3,1,1,discard,')).toBe(true);
  });

  it('with a note of two lines typed in', () => {
    const journal = read(text.replace('"a ""quoted"", note; here"', '"two\nlines"'));
    expect(names(journal)).toEqual(all);
    expect(journal.notices).toEqual([]);
    expect(journal.entries[0]?.note).toBe('two\nlines');
    expect(journal.entries[1]?.line).toBe(4);
  });

  it('with lines added by hand, few cells filled', () => {
    const short =
      'action,piece,length,width,thickness\nput,board end,31.5,5 1/2,3/4 in\ndiscard,board end,,,\n';
    const journal = read(short);
    expect(journal.entries).toHaveLength(2);
    expect(journal.entries[0]).toMatchObject({
      number: null,
      booking: null,
      deed: { piece: { length: 31.5 * 8128 } },
    });
    expect(journal.notices).toEqual([]);
  });
});

describe('a damaged journal', () => {
  const text = written(two);

  it('loses the damaged line and nothing else, whichever it is and however it is damaged', () => {
    const damages: readonly ((line: string) => string)[] = [
      () => 'x',
      () => '"',
      (line) => `"${line}`,
      (line) => line.replace('discard', 'disc"ard'),
      (line) => line.replace('discard', '??'),
      (line) => line.slice(0, 12),
      () => '\u0000\u0001',
      (line) => line.replace(/^\d+,\d+,(\d),3,discard/, '7,2,$1,300,dis-card'),
    ];
    const lines = text.trimEnd().split('\n');
    for (let at = 1; at < lines.length; at += 1) {
      for (const damage of damages) {
        const spoilt = lines.map((line, index) => (index === at ? damage(line) : line));
        const journal = read(`${spoilt.join('\n')}\n`);
        const others = wanted(two).filter((_, index) => index !== at - 1);
        expect(journal.entries.map(plainEntry)).toEqual(others);
        expect(journal.notices.filter(({ kind }) => kind === 'damaged line')).toMatchObject([
          { line: at + 1 },
        ]);
        expect(journal.lastBooking).toBe(2);
      }
    }
  });

  it('says so when rows were deleted', () => {
    const lines = text.split('\n');
    expect(read([...lines.slice(0, 2), ...lines.slice(3)].join('\n')).notices).toEqual([
      { kind: 'booking with gaps', booking: 1, there: 2, of: 3 },
    ]);
  });
});
