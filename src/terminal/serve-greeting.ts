import { renderUnicodeCompact } from 'uqr';
import type { RunningServer } from '../server/index.ts';

type Greeted = Pick<RunningServer, 'urls' | 'fingerprint' | 'authority'>;

/** Where the page is opened, and what a device's browser is compared with; the lines of a terminal. */
export function greeting({ urls, fingerprint, authority }: Greeted): readonly string[] {
  const [first = urls.itself ?? ''] = urls.devices;
  return [
    ...whereToOpen(urls),
    `A device that is to keep the page for use without a network has to trust this laptop: ${first}trust says how.`,
    "Compare the SHA-256 of the shop's authority there with this one:",
    authority,
    'Until then the browser warns of a certificate that it does not know. Compare its SHA-256 with this one:',
    fingerprint,
    '',
  ];
}

function whereToOpen({ devices, itself }: Greeted['urls']): readonly string[] {
  const [first, ...others] = devices;
  if (first === undefined)
    return [
      `No other device can open the page: this machine is in no network, or --host keeps the server from it. On this machine itself: ${itself}`,
    ];
  const elsewhere = others.length === 0 ? '' : ` Where that does not open: ${others.join(' or ')}.`;
  return [
    renderUnicodeCompact(first, { border: 2 }),
    `Open ${first} on the tablet, or scan the square.${elsewhere}`,
  ];
}
