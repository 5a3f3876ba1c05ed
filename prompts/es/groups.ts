/** What several steps are called when they are asked together. */
export const groups = {
  fuelFilters: { title: 'Filtros de combustible' },
  primer: { title: 'Cebador duro y enroscado' },
  hosesBootsBelts: { title: 'Mangueras, manguitos y correas' },
  oilFeeds: { title: 'Aceite en galerías y turbo' },
  wiringFasteners: { title: 'Cableado y tornillería' },
  coldLevels: { title: 'Refrigerante y dirección, en frío' },
} as const satisfies Record<string, { title: string }>;

/** What a step asks for, in a few words beside the others of its group. */
export const items = {
  'fill.firstFilterPreFilled': 'el primero lleno, junta aceitada',
  'fill.firstFilterDry': 'el primero seco, junta aceitada',
  'fill.secondFilterPreFilled': 'el segundo lleno, junta aceitada',
  'fill.secondFilterDry': 'el segundo seco, junta aceitada',
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
