/** Felt through a glove: one long pulse for what is asked, three for a hazard. Devices without it do nothing. */
export function vibrate(what: 'asked' | 'hazard'): void {
  if ('vibrate' in navigator) navigator.vibrate(what === 'hazard' ? [400, 150, 400, 150, 400] : 200);
}
