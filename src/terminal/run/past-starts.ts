import { existsSync } from 'node:fs';
import { ArchiveError } from '../../archive/archive-error.ts';
import { DEFAULT_PLACE } from '../../archive/place.ts';
import type { SessionHeader } from '../../session/header.ts';
import type { Session } from '../../session/session.ts';

/**
 * Holds a session beside the shop's earlier starts of its engine, where the folder has an archive, or
 * FIRST_FIRE_ARCHIVE names one. Nobody waits for it, and what it cannot do is said in a sentence.
 */
export async function besidePastStarts(session: Session, header: SessionHeader): Promise<void> {
  const { FIRST_FIRE_ARCHIVE: named } = process.env;
  if (named === undefined && !existsSync(DEFAULT_PLACE)) return;
  try {
    const { openArchive } = await import('../../archive/open.ts');
    const { pastStarts } = await import('../../archive/past-starts.ts');
    const archive = await openArchive(named ?? DEFAULT_PLACE, false);
    try {
      session.holdBeside(await pastStarts(archive, header));
    } finally {
      await archive.close();
    }
  } catch (error) {
    if (!(error instanceof ArchiveError)) throw error;
    session.report(`This start is not held beside earlier ones: ${error.message}`);
  }
}
