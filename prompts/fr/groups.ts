/** What several steps are called when they are asked together. */
export const groups = {
  fuelFilters: { title: 'Filtres à gazole' },
  primer: { title: 'Pompe dure et revissée' },
  hosesBootsBelts: { title: 'Durites, manchons et courroies' },
  oilFeeds: { title: 'Huile aux galeries et au turbo' },
  wiringFasteners: { title: 'Câblage et boulons' },
  coldLevels: { title: 'Liquide et direction, à froid' },
} as const satisfies Record<string, { title: string }>;

/** What a step asks for, in a few words beside the others of its group. */
export const items = {
  'fill.firstFilterPreFilled': 'premier rempli, joint huilé',
  'fill.firstFilterDry': 'premier à sec, joint huilé',
  'fill.secondFilterPreFilled': 'second rempli, joint huilé',
  'fill.secondFilterDry': 'second à sec, joint huilé',
  'prime.firm': 'elle résiste',
  'prime.screwedHome': 'vissée à fond',
  'walkRound.hoses': 'durites sur leur bourrelet, colliers derrière',
  'walkRound.boots': 'manchons emboîtés',
  'walkRound.belts': 'courroies tendues',
  'walkRound.wiring': 'loin de la chaleur et de ce qui bouge',
  'walkRound.fasteners': 'serrés et marqués',
  'barOver.prelube': "pompée par l'orifice jusqu'à la pression",
  'barOver.turboFeed': 'arrivée du turbo remplie, roue tournée à la main',
  'signOff.coolantLevel': "vase d'expansion",
  'signOff.steeringLevel': 'liquide de direction',
} as const satisfies Record<string, string>;
