import type { JobCard } from '../../machines/context.ts';

/** Invented, with accents and case to be searched across. */
export const demoCard: JobCard = {
  vehicle: 'Invented truck seven',
  engine: 'Rebuilt diesel',
  technician: 'Zoë Examplé',
  second: 'Ben Example',
  supervisor: 'Cleo Example',
};
