/**
 * A process that books on a rack until it has done enough or is killed:
 *
 *     node booking-child.js BUILT JOURNAL NAME HOW-MANY whole|crumbs
 *
 * Each booking puts some pieces, each of which says how many there are. A booking that has been made is told on stdout
 * by its pieces' common name. With `crumbs` every write reaches the disk in small bits with pauses between, so that
 * a kill finds bookings half written.
 */
const [, , built, journal, name, howMany, manner] = process.argv;
const { appendBooking } = await import(`${built}/shell/rack/append-booking.js`);
const { disk } = await import(`${built}/shell/rack/disk.js`);
const crumb = 40;
const millisecondsBetweenCrumbs = 0.3;
const nobodyWakesIt = new Int32Array(new SharedArrayBuffer(4));
const crumbly = {
  ...disk,
  write: (handle, bytes) => {
    Atomics.wait(nobodyWakesIt, 0, 0, millisecondsBetweenCrumbs);
    return disk.write(handle, bytes.subarray(0, crumb));
  },
};

function bookingOf(number) {
  const pieces = 1 + (number % 6);
  const deeds = Array.from({ length: pieces }, (_, index) => ({
    deed: { action: 'put', piece: piece(`${name}.${number}.${index + 1}`) },
    note: `one of ${pieces}`,
  }));
  return { occasion: { time: '2031-01-02T03:04:05Z', job: name, layout: '' }, deeds };
}

function piece(called) {
  const size = { length: 8128 * 20, width: 8128 * 4, dressedThickness: 6604 };
  const names = { nominalThickness: '4/4', nominalInches: 1, species: 'white oak', grade: '', tone: '' };
  return {
    name: called,
    ...size,
    ...names,
    lookA: 5,
    lookB: 5,
    cost: 1,
    defects: [],
    beside: [],
    parent: null,
  };
}

process.stdout.write('ready\n');
for (let number = 1; number <= Number(howMany); number += 1) {
  const done = await appendBooking(
    journal,
    () => ({ ok: true, value: { draft: bookingOf(number), result: null } }),
    { unit: 'in', disk: manner === 'crumbs' ? crumbly : disk, patience: 60_000 },
  );
  if (done.kind !== 'booked') throw new Error(JSON.stringify(done));
  process.stdout.write(`${name}.${number}\n`);
}
