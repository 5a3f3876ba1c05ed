import type { Device } from '../../face/face.ts';
import { words } from '../../words/index.ts';

const text = words.devices;

/** The paired devices of the bay, each to be let go of. */
export function Devices({
  devices,
  own,
  onLetGo,
}: {
  readonly devices: readonly Device[];
  /** The device that shows this: it leaves by another control. */
  readonly own: string;
  readonly onLetGo: (device: string) => void;
}) {
  return (
    <section aria-labelledby="devices">
      <h2 id="devices">{text.title}</h2>
      <ul className="records">
        {devices
          .filter(({ id }) => id !== own)
          .map(({ id, name, role, connected }) => (
            <li key={id}>
              <p>
                <strong>{name}</strong> {words.people[role]}, {connected ? text.here : text.away}
              </p>
              <button type="button" onClick={() => onLetGo(id)}>
                {text.letGo}
                <span className="unseen"> {name}</span>
              </button>
            </li>
          ))}
      </ul>
    </section>
  );
}
