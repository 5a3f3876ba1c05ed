import { useState } from 'react';
import type { Profile } from '../../../profile/schema.ts';
import type { BayDeeds } from '../../face/face.ts';
import { loadedProfiles } from '../../local/choice.ts';
import { words } from '../../words/index.ts';

/** Engines that were described on this device or loaded into it, to be kept by the laptop; nothing where there are none. */
export function OwnEngines({ deeds }: { readonly deeds: Pick<BayDeeds, 'bringEngine'> }) {
  const [told, setTold] = useState('');
  const engines = loadedProfiles();
  if (engines.length === 0) return null;
  const bring = async (profile: Profile) => {
    try {
      setTold(words.newEngine.brought(await deeds.bringEngine(profile)));
    } catch (cause) {
      setTold(cause instanceof Error ? cause.message : String(cause));
    }
  };
  return (
    <section className="controls" aria-label={words.newEngine.onThisDevice}>
      {engines.map(profile => (
        <button key={profile.name} type="button" onClick={() => void bring(profile)}>
          {words.newEngine.bring} {profile.name}
        </button>
      ))}
      <p role="status">{told}</p>
    </section>
  );
}
