import { chmodSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { appendBooking } from '../../src/shell/rack/append-booking.ts';
import { loadRack, type LoadedRack } from '../../src/shell/rack/journal-file.ts';
import { withLock } from '../../src/shell/rack/lock.ts';

let folder = '';
let file = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'rack-load-'));
  file = join(folder, 'rack.csv');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const header = 'entry;booking;line;of;action;piece;length;width;thickness;species;end';

function book(name: string): ReturnType<typeof appendBooking> {
  const draft = {
    occasion: { time: 'T', job: '', layout: '' },
    deeds: [{ deed: { action: 'discard', name, piece: null } as const, note: '' }],
  };
  return appendBooking(file, () => ({ ok: true, value: { draft, result: null } }), { unit: 'mm' });
}

async function load(): Promise<LoadedRack> {
  const loaded = await loadRack(file);
  if ('kind' in loaded) throw new Error(loaded.kind);
  return loaded;
}

describe('loading a rack', () => {
  it('that is not there yet gives an empty one, and writes nothing', async () => {
    expect((await load()).rack.pieces.size).toBe(0);
    expect(() => readFileSync(file)).toThrow('ENOENT');
  });

  it('re-saved in the one-byte code of western Windows, with lines of ours after it', async () => {
    const row = '1;1;1;1;put;Nu\u00dfbaum;500 mm;80 mm;20 mm;ch\u00eane;.';
    writeFileSync(file, Buffer.from(`${header}\r\n${row}\r\n`, 'latin1'));
    expect(await book('Nu\u00dfbaum')).toMatchObject({ kind: 'booked', booking: 2 });
    const { rack } = await load();
    expect([...rack.pieces.keys()]).toEqual(['Nu\u00dfbaum']);
    expect(rack.pieces.get('Nu\u00dfbaum')).toMatchObject({
      piece: { species: 'ch\u00eane' },
      where: { kind: 'discarded' },
    });
    expect(rack.notices).toEqual([]);
  });

  it('in UTF-16, or no journal at all, is refused and left alone', async () => {
    for (const [bytes, kind] of [
      [Buffer.from('\uFEFFaction,piece', 'utf16le'), 'rack in UTF-16'],
      [Buffer.from('board,length\nB1,20\n'), 'no journal'],
    ] as const) {
      writeFileSync(file, bytes);
      expect(await loadRack(file)).toMatchObject({ kind, file });
      expect(await book('x')).toMatchObject({ kind, file });
      expect(readFileSync(file).equals(bytes)).toBe(true);
    }
  });

  it('while a booking is being written waits for it, and does not call its half torn', async () => {
    writeFileSync(file, `${header}\n`);
    const line = '1;1;1;1;discard;C234X;;;;;.\n';
    const reading = await withLock(file, 0, () => {
      writeFileSync(file, `${header}\n${line.slice(0, 9)}`);
      const begun = loadRack(file);
      writeFileSync(file, `${header}\n${line}`);
      return begun;
    });
    if (!reading.held) throw new Error('busy');
    const loaded = await reading.value;
    expect(loaded).toMatchObject({ journal: { notices: [], entries: [{ deed: { name: 'C234X' } }] } });
  });

  it('with a torn end from a folder that may not be written tells of it and goes on', async () => {
    writeFileSync(file, `${header}\n1;1;1;1;discard;C234X;;;;;.\n2;2;1;2;disc`);
    chmodSync(folder, 0o555);
    const { journal } = await load();
    chmodSync(folder, 0o755);
    expect(journal.entries).toHaveLength(1);
    expect(journal.notices).toMatchObject([{ kind: 'torn tail', line: 3 }]);
    expect(readFileSync(file, 'utf8').endsWith('disc')).toBe(true);
  });

  it('keeps the dialect it finds when it goes on', async () => {
    writeFileSync(file, `\uFEFF${header};shelf\r\n1;1;1;1;put;a;20;4;3/4;oak;.;top\r\n`);
    await book('a');
    expect(readFileSync(file, 'utf8').split('\r\n')).toEqual([
      `\uFEFF${header};shelf`,
      '1;1;1;1;put;a;20;4;3/4;oak;.;top',
      '2;2;1;1;discard;a;;;;;.;',
      '',
    ]);
  });
});
