import type { JobCard } from '../../machines/context.ts';
import { bySentence } from '../../prompts/by-sentence.ts';
import type { Language } from '../../prompts/types.ts';
import type { Profile } from '../profile/schema.ts';

/** Invented people and vehicle, for practice and for a first look. */
export const demoJob: JobCard = {
  vehicle: 'Invented truck seven',
  engine: 'Invented rebuilt diesel',
  technician: 'Ada Example',
  second: 'Ben Example',
  supervisor: 'Cleo Example',
};

/** What an engine for practice stands in. */
const inventedPlaces: Readonly<Record<Profile['use']['kind'], string>> = {
  vehicle: 'Invented vehicle',
  generator: 'Invented generating set',
  marine: 'Invented boat',
  stationary: 'Invented machine',
};

/** The card of a practice on this engine, in this language: its own name, and people who are marked as invented. */
export function practiceJob({ use, engine }: Profile, { bySentence: table }: Language): JobCard {
  const tell = (sentence: string) => bySentence(sentence, table);
  const marked = (name: string) => tell(`${name} (invented)`);
  return {
    vehicle: tell(inventedPlaces[use.kind]),
    engine: engine.name,
    technician: marked(demoJob.technician),
    second: marked(demoJob.second),
    supervisor: marked(demoJob.supervisor),
  };
}

const people = ['technician', 'second', 'supervisor'] as const;

/** What keeps a card from a real engine: somebody on it is invented. A sentence; null where nothing does. */
export function inventedOn(job: JobCard, { invented }: Profile): string | null {
  if (invented) return null;
  const person = people.find(role => job[role].startsWith(demoJob[role]));
  return person === undefined
    ? null
    : `"${job[person]}" is invented; on the card of a real engine stand those who start it, and its vehicle.`;
}
