import { assessOils, type OilFault } from '../../../engineering/oil-grade.ts';
import { amount, answer, fromList, said, subject } from '../subject.ts';

const FAULTS: Readonly<Record<OilFault, string>> = {
  noWinterGrade: 'no winter grade, nothing promised for cranking in the cold',
  tooThickCold: 'too thick to crank in that cold',
  tooThinHot: 'can be too thin at running temperature',
  notForThisNight: 'is for other nights by the maker of the engine',
  needsDataSheet: 'above 100 °C the data sheet is needed (--v40, --v100)',
};

export const oil = subject({
  name: 'oil',
  summary: 'which engine oils suit the coldest crank and the running engine',
  numbers: {
    forecastLowC: {
      flag: 'low',
      quantity: 'temperature',
      help: 'coldest temperature at which it is cranked',
    },
    runningC: { flag: 'running', quantity: 'temperature', help: 'oil in the running engine', otherwise: 100 },
    minRunningViscosityMm2S: {
      flag: 'min-viscosity',
      quantity: 'viscosity',
      help: 'least viscosity that the engine needs when running',
    },
    viscosity40Mm2S: { flag: 'v40', quantity: 'viscosity', help: 'data sheet at 40 °C, for a single grade' },
    viscosity100Mm2S: {
      flag: 'v100',
      quantity: 'viscosity',
      help: 'data sheet at 100 °C, for a single grade',
    },
  },
  words: { grade: { flag: 'grades', help: 'grades on offer, such as 10W-30,15W-40' } },
  answer: ({ number, words }) => {
    const grades = (words('grade') ?? '').split(',').filter(grade => grade.trim() !== '');
    // One data sheet speaks for one oil only.
    const sheet = grades.length === 1 && {
      viscosity40Mm2S: number('viscosity40Mm2S'),
      viscosity100Mm2S: number('viscosity100Mm2S'),
    };
    return answer(
      fromList(
        assessOils(
          grades.map(grade => ({ grade: grade.trim(), ...sheet })),
          {
            forecastLowC: number('forecastLowC'),
            runningC: number('runningC'),
            minRunningViscosityMm2S: number('minRunningViscosityMm2S'),
          },
        ),
        'grade',
      ),
      assessments =>
        assessments.flatMap(({ grade, suits, faults, runningViscosityMm2S }) => [
          said(grade, suits ? 'suits' : faults.map(fault => FAULTS[fault]).join('; ')),
          ...(runningViscosityMm2S === undefined
            ? []
            : [amount(`${grade}, least viscosity when running`, runningViscosityMm2S, 'viscosity')]),
        ]),
    );
  },
});
