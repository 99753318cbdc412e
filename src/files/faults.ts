import { brief, MachineFault, Problem } from '../problem.js';

/** Words for the error codes of the file system. */
const FAULTS: Readonly<Record<string, string>> = {
  ENOSPC: 'the disk is full',
  EDQUOT: 'your share of the disk is full',
  EFBIG: 'it is larger than a file may be here',
  EACCES: 'you may not write there',
  EPERM: 'you may not write there',
  EROFS: 'the disk can only be read',
  EBUSY: 'it is in use, or a disk of its own; a folder inside it will do',
  EXDEV: 'it is a disk of its own; a folder inside it will do',
  EIO: 'the disk failed',
  EMFILE: 'too many files are open',
  ENFILE: 'too many files are open',
  ESHORT: 'the disk did not take all of it',
  ENOENT: 'nothing can be made there',
};

/** Reasons why a file cannot be read that a person can mend, by error code. */
const UNREAD: Readonly<Record<string, string>> = {
  ENOENT: 'found no such file',
  ENOTDIR: 'found no such file',
  ENAMETOOLONG: 'found a name too long for a file',
  ELOOP: 'found links that lead round in a ring',
  EISDIR: 'found a folder',
  EACCES: 'found a file that may not be read',
  EPERM: 'found a file that may not be read',
};

/** Converts an error of reading a file to a Problem or MachineFault that names the path; returns others unchanged. */
export function unread(error: unknown, path: string, what: string): unknown {
  const { code } = error as NodeJS.ErrnoException;
  if (code === undefined) return error;
  const reason = UNREAD[code];
  if (reason === undefined) return new MachineFault(`${path}: could not be read (${code})`, { cause: error });
  return new Problem(`${code === 'ENAMETOOLONG' ? brief(path) : path}: ${reason}; expected ${what}`);
}

/** Converts an error of the file system to a Problem or MachineFault that names the path; returns others unchanged. */
export function explained(error: unknown, path: string): unknown {
  if (!(error instanceof Error) || !('syscall' in error) || !('code' in error)) return error;
  const code = String(error.code);
  if (code === 'ENOTDIR' || code === 'EEXIST')
    return new Problem(`${path}: found a file in the way; expected a folder`);
  if (code === 'ENAMETOOLONG') {
    return new Problem(`${brief(path)}: found a name too long for this disk; expected a shorter one`);
  }
  return new MachineFault(`${path}: could not be written: ${FAULTS[code] ?? error.message}`, { cause: error });
}
