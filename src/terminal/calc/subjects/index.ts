import type { Subject } from '../subject.ts';
import { battery } from './battery.ts';
import { boil } from './boil.ts';
import { coolDown } from './cool-down.ts';
import { coolant } from './coolant.ts';
import { fault } from './fault.ts';
import { fuel } from './fuel.ts';
import { heatSoak } from './heat-soak.ts';
import { heater } from './heater.ts';
import { idle } from './idle.ts';
import { oil } from './oil.ts';
import { oilPressure } from './oil-pressure.ts';
import { priming } from './priming.ts';
import { starter } from './starter.ts';
import { sweep } from './sweep.ts';
import { viscosity } from './viscosity.ts';
import { warmUp } from './warm-up.ts';

/** Everything that `npm start -- calc` can work out, in the order of a first start. */
export const subjects: readonly Subject[] = [
  coolant,
  boil,
  oil,
  viscosity,
  fuel,
  priming,
  battery,
  starter,
  heater,
  idle,
  oilPressure,
  sweep,
  fault,
  warmUp,
  heatSoak,
  coolDown,
];
