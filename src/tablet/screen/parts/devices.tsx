import type { BayDeeds, BayPart } from '../../face/face.ts';
import { words } from '../../words/index.ts';
import { useNow } from '../use-face.ts';

type Device = BayPart['devices'][number];

/** Less than this is said as a warning: the next hour is not sure. */
const LOW = 0.2;

const isAway = ({ connected, quiet }: Device) => !connected || quiet;

/** How it stands with a device, in a few words. */
function standingOf(device: Device, nowMs: number): string {
  const { devices: text } = words;
  const { lastWordMs, battery, quiet, connected, owner } = device;
  const ago = lastWordMs === null ? '' : text.ago(Math.max(0, Math.round((nowMs - lastWordMs) / 1000)));
  return [
    quiet ? text.quiet : connected ? text.here : text.away,
    owner ? text.leads : '',
    ago,
    battery ? text.battery(Math.round(battery.share * 100), battery.charging) : '',
  ]
    .filter(each => each !== '')
    .join(', ');
}

/** The paired devices of the bay: whether they answer, their batteries, and what may be done about each. */
export function Devices({ bay, deeds }: { readonly bay: BayPart; readonly deeds: BayDeeds | null }) {
  const { devices: text } = words;
  useNow(true);
  const nowMs = Date.now() + bay.serverAheadMs;
  const own = bay.devices.find(({ id }) => id === bay.device);
  const mayRenew = own?.role === 'supervisor' || own?.owner === true;
  return (
    <section aria-labelledby="devices">
      <h2 id="devices">{text.title}</h2>
      <ul className="records">
        {bay.devices.map(device => (
          <li key={device.id} className={isAway(device) ? 'away' : ''}>
            <p>
              <strong>{device.name}</strong> {words.people[device.role]}
              {device.id === bay.device && ` (${text.own})`}
              <br />
              <span className={isAway(device) || (device.battery?.share ?? 1) < LOW ? 'worse' : 'quiet'}>
                {standingOf(device, nowMs)}
              </span>
            </p>
            {deeds && device.id !== bay.device && mayRenew && (
              <>
                <button type="button" onClick={() => deeds.renew(device.id)}>
                  {text.renew}
                  <span className="unseen"> {device.name}</span>
                </button>
                <button type="button" onClick={() => deeds.letGo(device.id)}>
                  {text.letGo}
                  <span className="unseen"> {device.name}</span>
                </button>
              </>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
