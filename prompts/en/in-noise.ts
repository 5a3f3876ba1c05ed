import type { controls, replies } from './replies.ts';

/** Wordings of replies and control words, by what they stand for. */
export type Farthest = Readonly<Partial<Record<keyof typeof replies | keyof typeof controls, string>>>;

/**
 * Where it is not the first: the wording that sounds least like everything else that may be said beside it, by the
 * distances of `npm run confusions`. In a loud bay it is the one that is asked for.
 */
export const farthest: Farthest = {
  yes: 'affirmative',
  no: 'negative',
  ready: 'we are ready',
  notYet: 'problem',
  understood: 'i understand',
  protectionOn: 'protection is on',
  airGood: 'extraction running',
  vehicleSecured: 'vehicle is secured',
  cutOffReady: 'cut off is ready',
  coolantFull: 'coolant is full',
  filterFitted: 'filter is fitted',
  steeringFull: 'steering is full',
  primerFirm: 'primer is firm',
  screwedHome: 'primer screwed home',
  pluggedIn: 'connected',
  hosesGood: 'hoses are good',
  bootsGood: 'boots are good',
  beltsGood: 'belts are good',
  wiringGood: 'wiring is good',
  fastenersMarked: 'fasteners are marked',
  fuellingDisabled: 'fuelling is disabled',
  provedOff: 'it is proved',
  oilPressureShows: 'we have pressure',
  nothingYet: 'no pressure',
  fuellingRestored: 'fuelling is restored',
  noCodes: 'no fault codes',
  fired: 'engine running',
  pressureGood: 'pressure is good',
  noOilPressure: 'no oil pressure',
  hunting: 'idle is hunting',
  pointGood: 'dry and tight',
  noBubbles: 'no more bubbles',
  levelsGood: 'levels are good',
  stillRunning: 'it keeps running',
  torqued: 'torque done',
  allOff: 'engine and key off',
  endSession: 'give up for today',
  causeOverspeed: 'engine ran away',

  hold: 'hold on',
  goBack: 'one step back',
  sayAgain: 'say that again',
  timeLeft: 'how much time',
  help: 'what can i say',
};
