/** What the system says of a file or folder, as the middle part of a sentence. */
const causes: Readonly<Record<string, string>> = {
  ENOSPC: 'the disk is full',
  EDQUOT: 'the disk quota is used up',
  EFBIG: 'the file has reached the largest size allowed here',
  EIO: 'the disk reports a fault',
  ENXIO: 'the disk is gone',
  ENODEV: 'the disk is gone',
  EROFS: 'the disk is read-only',
  EACCES: 'permission is denied',
  EPERM: 'permission is denied',
  ENOENT: 'there is no such file or folder',
  ENOTDIR: 'part of the path is not a folder',
  EEXIST: 'there is such a file already',
  EISDIR: 'it is a folder',
  ENAMETOOLONG: 'the name is too long',
  ELOOP: 'the links in the path lead in a circle',
  EMFILE: 'too many files are open',
};

/** The system's code of an error (`ENOSPC`), or an empty string. */
export function systemCode(error: unknown): string {
  return error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : '';
}

/** A disk that takes no more now, and may do so again when there is room. */
export const isNoRoom = (error: unknown): boolean => ['ENOSPC', 'EDQUOT'].includes(systemCode(error));

/** The cause of a failed file operation, as the middle part of a sentence. */
export function systemCause(error: unknown): string {
  const code = systemCode(error);
  const known = causes[code];
  if (known !== undefined) return known;
  // Errors of our own have codes as well.
  if (/^E[A-Z0-9]+$/.test(code)) return `the system reports ${code}`;
  return error instanceof Error ? error.message : String(error);
}
