import { describe, expect, it } from 'vitest';
import { isNoRoom, systemCause, systemCode } from '../../src/files/cause.ts';

const failure = (code: string): Error => Object.assign(new Error('it failed'), { code });

describe('why a file cannot be read or written is said in words', () => {
  it.each([
    ['ENOSPC', 'the disk is full'],
    ['EDQUOT', 'the disk quota is used up'],
    ['EFBIG', 'the file has reached the largest size allowed here'],
    ['EIO', 'the disk reports a fault'],
    ['ENXIO', 'the disk is gone'],
    ['ENODEV', 'the disk is gone'],
    ['EROFS', 'the disk is read-only'],
    ['EACCES', 'permission is denied'],
    ['EPERM', 'permission is denied'],
    ['ENOENT', 'there is no such file or folder'],
    ['ENOTDIR', 'part of the path is not a folder'],
    ['EEXIST', 'there is such a file already'],
    ['EISDIR', 'it is a folder'],
    ['ENAMETOOLONG', 'the name is too long'],
    ['ELOOP', 'the links in the path lead in a circle'],
    ['EMFILE', 'too many files are open'],
    ['EWHATEVER', 'the system reports EWHATEVER'],
  ])('%s: %s', (code, words) => {
    expect(systemCause(failure(code))).toBe(words);
  });

  it('and by what was thrown, where the system gives no code', () => {
    expect(systemCause(new Error('the file was deleted'))).toBe('the file was deleted');
    expect(systemCause('broken')).toBe('broken');
    expect(systemCause(Object.assign(new Error('no sound'), { code: 'soundUnusable' }))).toBe('no sound');
    expect(systemCode(Object.assign(new Error('x'), { code: 5 }))).toBe('');
    expect(systemCode({ code: 'ENOSPC' })).toBe('');
  });

  it('a full disk and a used-up quota may have room again, a broken disk has none', () => {
    expect(['ENOSPC', 'EDQUOT', 'EIO', 'EROFS'].map(code => isNoRoom(failure(code)))).toEqual([
      true,
      true,
      false,
      false,
    ]);
    expect(isNoRoom(undefined)).toBe(false);
  });
});
