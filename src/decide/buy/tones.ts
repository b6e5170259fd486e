import type { Job } from '../../flow/stock/job.ts';

/** The tones in which a job's parts that show may be cut, in order of appearance; none where nothing asks for one. */
export function tonesOf({ parts, boards, shop }: Job): string[] {
  const shows = parts.some(({ show, quantity }) => show > 0 && quantity > 0);
  return shop.showTone === 'any' || !shows ? [] : [...new Set(boards.map(({ tone }) => tone))];
}

/** The job with all its parts that show bound to one tone. */
export function inTone(job: Job, tone: string): Job {
  return { ...job, parts: job.parts.map((part) => (part.show > 0 ? { ...part, tone } : part)) };
}

/**
 * The tone that bought boards are taken to have: a buyer carries a piece of his own wood to the yard and matches it. It
 * is that of most of the owned wood, by area (the first of equals); no word where nothing is owned.
 */
export function toneToMatch({ boards }: Pick<Job, 'boards'>): string {
  const areas = new Map<string, number>();
  for (const { tone, quantity, length, width } of boards)
    areas.set(tone, (areas.get(tone) ?? 0) + quantity * length * width);
  let [most, area] = ['', 0];
  for (const [tone, sum] of areas) if (sum > area) [most, area] = [tone, sum];
  return most;
}
