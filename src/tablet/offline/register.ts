/** How far this device can do without a network. */
export type Offline =
  | { readonly state: 'ready' | 'keeping' }
  | { readonly state: 'not'; readonly why: string };

export interface OfflineWatch {
  onChange(offline: Offline): void;
  /** A new version has been stored and waits; `use` reloads the page with it. */
  onUpdate(use: () => void): void;
}

function keepHearing(worker: ServiceWorker): Promise<unknown> {
  const { port1, port2 } = new MessageChannel();
  return new Promise(resolve => {
    port1.onmessage = ({ data }) => resolve(data);
    worker.postMessage('keep hearing', [port2]);
  });
}

/** Stores the page for use without a network. A new version waits until it is told to take over. */
export async function keepOffline({ onChange, onUpdate }: OfflineWatch): Promise<void> {
  if (!('serviceWorker' in navigator)) {
    onChange({ state: 'not', why: 'the page did not come over https.' });
    return;
  }
  onChange({ state: 'keeping' });
  const registration = await navigator.serviceWorker.register('/service-worker.js');
  const offerWaiting = () => {
    const { waiting } = registration;
    if (!waiting || !navigator.serviceWorker.controller) return;
    onUpdate(() => {
      navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
      waiting.postMessage('take over');
    });
  };
  registration.addEventListener('updatefound', () => {
    registration.installing?.addEventListener('statechange', offerWaiting);
  });
  offerWaiting();
  const { active } = await navigator.serviceWorker.ready;
  const answer = active ? await keepHearing(active) : 'it does not start';
  onChange(answer === 'kept' ? { state: 'ready' } : { state: 'not', why: `${String(answer)}.` });
}
