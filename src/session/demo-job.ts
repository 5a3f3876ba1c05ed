import type { JobCard } from '../../machines/context.ts';

/** Invented people and vehicle, for practice and for a first look. */
export const demoJob: JobCard = {
  vehicle: 'Invented truck seven',
  engine: 'Invented rebuilt diesel',
  technician: 'Ada Example',
  second: 'Ben Example',
  supervisor: 'Cleo Example',
};
