import { judgeBiodiesel } from '../../../src/engineering/biodiesel.ts';
import { boilPoint, planMix } from '../../../src/engineering/coolant.ts';
import {
  blendCloudPoint,
  blendForNight,
  fillTank,
  fuelByPractice,
  gellingRisk,
} from '../../../src/engineering/fuel.ts';
import { freezePoint, massShareOf, shareForNight } from '../../../src/engineering/glycol.ts';
import { assessOils } from '../../../src/engineering/oil-grade.ts';
import { fillTimeFactor, viscosityAt } from '../../../src/engineering/oil-viscosity.ts';
import { viscosityIndex } from '../../../src/engineering/viscosity-index.ts';
import type { Statement } from './statement.ts';

const glycolTable = (name: string, chapter: RegExp) => ({
  ruleId: `ashrae-${name}-glycol`,
  source: [/ASHRAE Handbook, Fundamentals/, chapter],
  validity: [new RegExp(`pure ${name} glycol`), /maker's own chart/],
});

/** Fuel, coolant and oil. */
export const fluids: readonly Statement[] = [
  {
    name: 'share of biodiesel',
    sound: { 'parts[0].litres': 40, 'parts[0].biodieselShare': 0.1, limitShare: 0.2 },
    compute: given =>
      judgeBiodiesel(
        [{ litres: given['parts[0].litres'], biodieselShare: given['parts[0].biodieselShare'] }],
        given.limitShare,
      ),
    ranges: {
      'parts[0].litres': [0, 5000, 'litre'],
      'parts[0].biodieselShare': [0, 1, ''],
      limitShare: [0, 1, ''],
    },
    ruleId: 'biodiesel-share',
    source: [/Volume balance/, /ASTM D975/, /ASTM D7467/],
    validity: [/by volume/],
    verdictUnits: [''],
  },
  {
    name: 'draining and adding coolant',
    sound: {
      systemLitres: 40,
      inSystemLitres: 10,
      inSystemShare: 0.3,
      wantedShare: 0.25,
      concentrateShare: 0.95,
    },
    compute: planMix,
    ranges: {
      systemLitres: [0.5, 500, 'litre'],
      inSystemLitres: [0, 500, 'litre'],
      inSystemShare: [0, 1, ''],
      wantedShare: [0, 1, ''],
      concentrateShare: [0.3, 1, ''],
    },
    ruleId: 'coolant-volume-balance',
    source: [/Volume balance/],
    validity: [/0\.5 to 500 litre/],
  },
  {
    name: 'boiling under a cap',
    sound: { capPressureKpa: 100, altitudeM: 0, glycolShare: 0.5 },
    compute: given => boilPoint('ethylene', given),
    ranges: {
      capPressureKpa: [0, 250, 'kPa'],
      altitudeM: [-2000, 11_000, 'm'],
      glycolShare: [0, 0.578, ''],
    },
    ruleId: 'coolant-boiling',
    source: [/Raoult/, /IAPWS-IF97/, /ISO 2533/, /ASHRAE/],
    validity: [/0 to 250 kPa/],
  },
  {
    name: 'freezing of ethylene glycol',
    sound: { glycolShare: 0.5 },
    compute: ({ glycolShare }) => freezePoint('ethylene', glycolShare),
    ranges: { glycolShare: [0, 0.578, ''] },
    ...glycolTable('ethylene', /chapter 31, table 4/),
  },
  {
    name: 'mass share of propylene glycol',
    sound: { glycolShare: 0.5 },
    compute: ({ glycolShare }) => massShareOf('propylene', glycolShare),
    ranges: { glycolShare: [0, 0.6, ''] },
    ...glycolTable('propylene', /chapter 31, table 5/),
  },
  {
    name: 'glycol for a night',
    sound: { nightLowC: -20, marginK: 5 },
    compute: given => shareForNight('ethylene', given),
    ranges: { nightLowC: [-60, 50, 'degC'], marginK: [0, 20, 'K'] },
    ...glycolTable('ethylene', /chapter 31, table 4/),
  },
  {
    name: 'cloud point of a mix',
    sound: { 'parts[0].litres': 40, 'parts[0].cloudC': -9 },
    compute: given =>
      blendCloudPoint([{ litres: given['parts[0].litres'], cloudC: given['parts[0].cloudC'] }]),
    ranges: { 'parts[0].litres': [0, 5000, 'litre'], 'parts[0].cloudC': [-70, 30, 'degC'] },
    ruleId: 'cloud-point-blending-index',
    source: [/MNL50/],
    validity: [/-70 to 30 degC/],
  },
  {
    name: 'fuel for a night',
    sound: { no1CloudC: -40, no2CloudC: -9, nightLowC: -15, marginK: 3 },
    compute: blendForNight,
    ranges: { no1CloudC: [-70, 30, 'degC'], nightLowC: [-60, 50, 'degC'], marginK: [0, 20, 'K'] },
    ruleId: 'cloud-point-blending-index',
    source: [/MNL50/],
    validity: [/-70 to 30 degC/],
  },
  {
    name: 'filling a tank',
    sound: {
      tankLitres: 100,
      inTankLitres: 20,
      inTankCloudC: -5,
      no1CloudC: -40,
      no2CloudC: -9,
      nightLowC: -15,
      marginK: 3,
    },
    compute: fillTank,
    ranges: {
      tankLitres: [1, 5000, 'litre'],
      inTankLitres: [0, 5000, 'litre'],
      inTankCloudC: [-70, 30, 'degC'],
      no1CloudC: [-70, 30, 'degC'],
      no2CloudC: [-70, 30, 'degC'],
      nightLowC: [-60, 50, 'degC'],
      marginK: [0, 20, 'K'],
    },
    ruleId: 'cloud-point-blending-index',
    source: [/MNL50/],
    validity: [/-70 to 30 degC/],
  },
  {
    name: 'fuel by practice',
    sound: { nightLowC: -15, straightNo1BelowC: -25 },
    compute: fuelByPractice,
    ranges: { nightLowC: [-60, 50, 'degC'], straightNo1BelowC: [-60, 0, 'degC'] },
    ruleId: 'fuel-by-season',
    source: [/common practice, no published source/],
    validity: [/no substitute for a cloud point/],
  },
  {
    name: 'risk of gelling',
    sound: { nightLowC: -15, cloudC: -9, pourC: -20, marginK: 3 },
    compute: gellingRisk,
    // The pour point may be left out: its range is held by a test of its own.
    ranges: { nightLowC: [-60, 50, 'degC'], cloudC: [-70, 30, 'degC'], marginK: [0, 20, 'K'] },
    ruleId: 'gelling-risk',
    source: [/ASTM D2500/, /ASTM D97/],
    validity: [/cloud and pour points/],
  },
  {
    name: 'oil by grade',
    sound: { forecastLowC: -10, runningC: 95, minRunningViscosityMm2S: 10 },
    compute: given => assessOils([{ grade: '15W-40' }], given),
    ranges: {
      forecastLowC: [-60, 50, 'degC'],
      runningC: [60, 150, 'degC'],
      minRunningViscosityMm2S: [2, 50, 'mm2/s'],
    },
    ruleId: 'sae-j300',
    source: [/SAE J300 \(January 2015\)/, /ASTM D341/],
    validity: [/-60 to 50 degC/],
  },
  {
    name: 'oil by its data sheet',
    sound: { 'oils[0].viscosity40Mm2S': 110, 'oils[0].viscosity100Mm2S': 14 },
    compute: given =>
      assessOils(
        [
          {
            grade: '15W-40',
            viscosity40Mm2S: given['oils[0].viscosity40Mm2S'],
            viscosity100Mm2S: given['oils[0].viscosity100Mm2S'],
          },
        ],
        { forecastLowC: -10, runningC: 95, minRunningViscosityMm2S: 10 },
      ),
    ranges: {
      'oils[0].viscosity40Mm2S': [2, 2e7, 'mm2/s'],
      'oils[0].viscosity100Mm2S': [2, 2e7, 'mm2/s'],
    },
    ruleId: 'sae-j300',
    source: [/SAE J300/],
    validity: [/60 to 150 degC/],
  },
  {
    name: 'viscosity at a temperature',
    sound: {
      firstTemperatureC: 40,
      firstViscosityMm2S: 110,
      secondTemperatureC: 100,
      secondViscosityMm2S: 14,
      temperatureC: 0,
    },
    compute: given =>
      viscosityAt(
        [
          { temperatureC: given.firstTemperatureC, viscosityMm2S: given.firstViscosityMm2S },
          { temperatureC: given.secondTemperatureC, viscosityMm2S: given.secondViscosityMm2S },
        ],
        given.temperatureC,
      ),
    ranges: {
      firstTemperatureC: [-40, 150, 'degC'],
      firstViscosityMm2S: [2, 2e7, 'mm2/s'],
      secondTemperatureC: [-40, 150, 'degC'],
      secondViscosityMm2S: [2, 2e7, 'mm2/s'],
      temperatureC: [-40, 150, 'degC'],
    },
    ruleId: 'astm-d341',
    source: [/ASTM D341-20/],
    validity: [/cloud point/],
  },
  {
    name: 'how much longer a thick oil takes',
    sound: { viscosityMm2S: 1000, fullFlowViscosityMm2S: 500 },
    compute: fillTimeFactor,
    ranges: { viscosityMm2S: [2, 2e7, 'mm2/s'], fullFlowViscosityMm2S: [2, 2e7, 'mm2/s'] },
    ruleId: 'suction-limited-fill',
    source: [/Hagen-Poiseuille/],
    validity: [/laminar/],
  },
  {
    name: 'viscosity index',
    sound: { viscosity40Mm2S: 110, viscosity100Mm2S: 14 },
    compute: viscosityIndex,
    ranges: { viscosity40Mm2S: [2, 1e6, 'mm2/s'], viscosity100Mm2S: [2, 500, 'mm2/s'] },
    ruleId: 'astm-d2270',
    source: [/ASTM D2270-10\(2016\)/],
    validity: [/2 to 500 mm2\/s/],
  },
];
