import { useState } from 'react';
import { unfitFor } from '../../../profile/provenance.ts';
import type { Profile } from '../../../profile/schema.ts';
import type { BayDeeds } from '../../face/face.ts';
import { engineAccepted, loadedProfiles } from '../../local/choice.ts';
import { inOwnWords, words } from '../../words/index.ts';
import { Accept } from './accept.tsx';

/**
 * Engines that were described on this device or loaded into it, to be kept by the laptop, once nothing keeps them from a
 * first fire; nothing where there are none.
 */
export function OwnEngines({ deeds }: { readonly deeds: Pick<BayDeeds, 'bringEngine'> }) {
  const [told, setTold] = useState('');
  // Drawn anew when one was accepted: the list is read from what the device keeps.
  const [, setAccepted] = useState(0);
  const engines = loadedProfiles();
  if (engines.length === 0) return null;
  const bring = async (profile: Profile) => {
    try {
      setTold(words.newEngine.brought(await deeds.bringEngine(profile)));
    } catch (cause) {
      setTold(inOwnWords(cause instanceof Error ? cause.message : String(cause)));
    }
  };
  return (
    <section className="controls" aria-label={words.newEngine.onThisDevice}>
      {engines.map(profile => (
        <div key={profile.name}>
          <button type="button" disabled={unfitFor(profile).length > 0} onClick={() => void bring(profile)}>
            {words.newEngine.bring} {profile.name}
          </button>
          <Accept
            profile={profile}
            onAccept={accepted => {
              engineAccepted(accepted);
              setAccepted(count => count + 1);
            }}
          />
        </div>
      ))}
      <p role="status">{told}</p>
    </section>
  );
}
