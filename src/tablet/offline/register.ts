/** How far this device can do without a network. */
export type Offline =
  | { readonly state: 'ready' | 'keeping' }
  | { readonly state: 'not'; readonly why: string };

/** A new version that is stored and waits. */
export interface Update {
  /** In which it writes and goes on with records. */
  readonly vocabulary: number;
  /** Reloads the page with it. False when a session is open in some tab: then nothing is changed. */
  use(): Promise<boolean>;
}

export interface OfflineWatch {
  onChange(offline: Offline): void;
  onUpdate(update: Update): void;
}

/** Asks a version of the service worker, and waits for its answer. */
function ask(worker: ServiceWorker, question: 'keep hearing' | 'take over' | 'vocabulary'): Promise<unknown> {
  const { port1, port2 } = new MessageChannel();
  return new Promise(resolve => {
    port1.onmessage = ({ data }) => resolve(data);
    worker.postMessage(question, [port2]);
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
  const offerWaiting = async () => {
    const { waiting } = registration;
    if (!waiting || !navigator.serviceWorker.controller) return;
    onUpdate({
      vocabulary: Number(await ask(waiting, 'vocabulary')),
      async use() {
        const reload = () => location.reload();
        navigator.serviceWorker.addEventListener('controllerchange', reload, { once: true });
        if ((await ask(waiting, 'take over')) === 'taken') return true;
        navigator.serviceWorker.removeEventListener('controllerchange', reload);
        return false;
      },
    });
  };
  registration.addEventListener('updatefound', () => {
    registration.installing?.addEventListener('statechange', () => void offerWaiting());
  });
  void offerWaiting();
  const { active } = await navigator.serviceWorker.ready;
  const answer = active ? await ask(active, 'keep hearing') : 'it does not start';
  onChange(answer === 'kept' ? { state: 'ready' } : { state: 'not', why: `${String(answer)}.` });
}
