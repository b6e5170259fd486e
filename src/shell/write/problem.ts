import type { NotRegular } from '../not-regular.ts';

/** Why a file was not written; nothing of it is left behind, and what was there stays as it was. */
export type WriteProblem = SystemRefusal | PlaceTaken;

/** The system refused. */
interface SystemRefusal {
  readonly kind: 'not written';
  readonly file: string;
  /** The system's short name of the failure, such as `EACCES`. */
  readonly code: string;
}

/** What stands in its place is no file, so that a rename would put a file there instead; or it is a rack. */
interface PlaceTaken {
  readonly kind: 'not written on';
  readonly file: string;
  readonly what: NotRegular | 'a rack of offcuts';
}
