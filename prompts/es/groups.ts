/** What several steps are called when they are asked together. */
export const groups = {
  coolantIn: { title: 'Refrigerante mezclado y lleno' },
  bottles: { title: 'Refrigerante purgado, dirección llena' },
  gradeAndFilter: { title: 'Grado y filtro de aceite' },
  fuelAndFilters: { title: 'Combustible y sus filtros' },
  primer: { title: 'Cebador duro y enroscado' },
  hosesBootsBelts: { title: 'Mangueras, manguitos y correas' },
  oilFeeds: { title: 'Aceite en galerías y turbo' },
  wiringFasteners: { title: 'Cableado y tornillería' },
  coldLevels: { title: 'Refrigerante y dirección, en frío' },
} as const satisfies Record<string, { title: string }>;

/** What a step asks for, in a few words beside the others of its group. */
export const items = {
  'fill.coolantMix': '{concentrate} de {glycol}, {water} de agua<, hasta {freeze}>',
  'fill.coolantFilled': 'llenado despacio, purgas y calefacción abiertas',
  'fill.coolantBled': 'refrigerante estable y sin burbujas',
  'fill.steeringFull': 'dirección en la marca en frío',
  'fill.oilGrade': '{grades}',
  'fill.oilFilterPreFilled': 'filtro lleno, junta aceitada',
  'fill.oilFilterDry': 'filtro seco, junta aceitada',
  'fill.fuelGrade': 'con {tank}, {share} de biodiésel, para {coldest}: {advice}',
  'fill.firstFilterPreFilled': 'primer filtro lleno, junta aceitada',
  'fill.firstFilterDry': 'filtro de combustible seco, junta aceitada',
  'fill.secondFilterPreFilled': 'segundo filtro lleno, junta aceitada',
  'fill.secondFilterDry': 'segundo filtro seco, junta aceitada',
  'prime.firm': 'cuesta empujarlo',
  'prime.screwedHome': 'enroscado hasta el fondo',
  'walkRound.hoses': 'mangueras pasado el reborde y abrazaderas detrás',
  'walkRound.boots': 'manguitos asentados',
  'walkRound.belts': 'correas tensas',
  'walkRound.wiring': 'lejos del calor y de lo que se mueve',
  'walkRound.fasteners': 'apretada y marcada',
  'barOver.prelube': 'bombeado por la toma hasta ver presión',
  'barOver.turboFeed': 'entrada del turbo llena, rueda girada a mano',
  'signOff.coolantLevel': 'vaso de expansión',
  'signOff.steeringLevel': 'líquido de dirección',
} as const satisfies Record<string, string>;
